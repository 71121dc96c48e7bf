using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class SheetListsTests
{
    private static readonly Sheet Sheet = SheetShow.Build(SheetShow.Full);

    [Fact]
    public void Each_list_has_as_many_texts_in_a_row_as_columns_and_no_column_twice() =>
        Assert.All(
            SheetLists.All(Sheet),
            list =>
            {
                Assert.Equal(list.Columns.Count, list.Columns.Distinct().Count());
                Assert.InRange(list.Title.Length, 1, 31);
                Assert.All(list.Rows, row => Assert.Equal(list.Columns.Count, row.Count));
            }
        );

    [Fact]
    public void The_input_list_has_channel_line_and_what_it_needs()
    {
        var kick = Rows(SheetListKind.Inputs).Single(row => row["Id"] == "kick");

        Assert.Equal("1", kick["Desk"]);
        Assert.Equal("SR box input 1", kick["Enters at"]);
        Assert.Equal("boundary microphone", kick["Equipment"]);
        Assert.Equal("ON", kick["Phantom"]);
        Assert.Equal("SR box input 5", kick["Spare"]);
    }

    [Fact]
    public void The_output_list_has_every_output_of_the_rig()
    {
        var rows = Rows(SheetListKind.Outputs);

        Assert.Equal(2 + 8 + 8, rows.Length - Sheet.Device("amp").Outputs.Sum(group => group.Rows.Count));
        var first = rows.Single(row => row["Device id"] == "box-r" && row["Number"] == "1");
        Assert.Equal(
            ("Main L", "Desk main 1", "Right amp input 1", "loom B, 1 of 2", "MAIN LEFT"),
            (first["Signal"], first["Bus"], first["Goes to"], first["Way"], first["Label"])
        );
    }

    [Fact]
    public void The_output_check_says_bus_and_name_into_each_mix() =>
        Assert.Equal(
            ["Aux 3, Ears, left", "Aux 4, Ears, right", "Main 1, Main L", "Main 2, Main R", "Aux 1, Subs", "Aux 2, Wedge"],
            Rows(SheetListKind.Mixes).Select(row => row["Say"])
        );

    [Fact]
    public void Packs_name_person_mix_and_both_outputs()
    {
        var pack = Assert.Single(Rows(SheetListKind.Packs));

        Assert.Equal(
            ("1", "the singer", "Ears", "SL box output 5; SL box output 6", "declared"),
            (pack["Pack"], pack["Person"], pack["Mix"], pack["Output"], pack["Limiter"])
        );
    }

    [Fact]
    public void Packs_put_ears_first_and_leave_out_mixes_that_nobody_owns()
    {
        var full = SheetShow.Full;
        var show = full with { Feeds = [full.Feeds[3] with { Person = "the drummer" }, .. full.Feeds.Where(feed => feed.Id.Value != "wedge")] };

        Assert.Equal(["Ears", "Wedge"], SheetShow.Build(show).Packs.Select(pack => pack.Mix));
    }

    [Fact]
    public void The_spare_is_free_of_lines_labels_marks_and_cables_and_nearest()
    {
        var full = SheetShow.Full;
        var show = full with { Patch = full.Patch with { Labels = [new() { At = At("box-r/in/5"), Text = "SPARE KICK" }] } };

        // 2 is dead, 3 and 4 are keys, 5 has a label: 6 is left.
        Assert.Equal("SR box input 6", SheetShow.Build(show).LineChecks[0].Spare!.ToString());
        Assert.Equal(["inputs 6-8"], SheetShow.Build(show).Walk.Single(stop => stop.DeviceLabel == "SR box").Spares);
    }

    [Fact]
    public void The_way_of_a_line_is_that_of_the_cables_behind_its_input()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("far", SmallProfiles.Box)) with
        {
            Lines = [Line("talk", "far/in/1", "desk/channel/1")],
            Patch = new Patch { Streams = [Stream("a", "far/transmit/1-4", "box/receive/1-4")], Routes = [Route("desk/in/1", "desk/channel/1")] },
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("box/out/1", "desk/in/1") with { Way = "tie 7" }] } };

        Assert.Equal(["tie 7"], SheetShow.Build(show).LineChecks[0].Ways);
    }

    [Fact]
    public void Two_consoles_of_one_label_keep_a_column_each_in_no_case_named_like_another()
    {
        var show = Of(("Line", SmallProfiles.Console), ("box", SmallProfiles.Box)) with { Lines = [Line("kick", "box/in/1", "Line/channel/1")] };

        Assert.Contains("Line 2", SheetLists.Of(SheetShow.Build(show), SheetListKind.Inputs).Columns);
    }

    private static Dictionary<string, string>[] Rows(SheetListKind kind)
    {
        var list = SheetLists.Of(Sheet, kind);
        return [.. list.Rows.Select(row => list.Columns.Zip(row).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal))];
    }
}
