using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class CheckListTests
{
    private static readonly Sheet Sheet = SheetShow.Build(SheetShow.Full);

    [Fact]
    public void Lines_come_in_channel_order_one_row_for_each_half_of_a_pair() =>
        Assert.Equal(["Kick", "Keys L", "Keys R", "Voice", "Talk"], Sheet.LineChecks.Select(row => row.Line.Name));

    [Fact]
    public void The_walk_follows_zones_then_devices_and_ends_with_what_has_no_place()
    {
        var full = SheetShow.Full;
        var show = full with { Lines = [.. full.Lines, Line("fiddle", "box-l/in/2", "desk/channel/6"), Line("whistle", "box-l/in/1", "desk/channel/7")] };

        var walk = SheetShow.Build(show).Walk;

        Assert.Equal(
            ["SL box: whistle, fiddle", "SR box: Kick, Keys L, Keys R", "Desk: Talk", ": Voice"],
            walk.Select(stop => $"{stop.DeviceLabel}: {string.Join(", ", stop.Lines.Select(row => row.Line.Name))}")
        );
        Assert.Equal("Fiddle corner (house right)", walk[0].Zone);
    }

    [Fact]
    public void Each_console_that_receives_a_line_has_a_box_and_each_that_does_not_says_so()
    {
        var show = Of(("desk", SmallProfiles.Console), ("mon", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Lines = [Line("kick", "box/in/1", "desk/channel/1", "mon/channel/1"), Line("snare", "box/in/5", "desk/channel/5", "mon/channel/5")],
            Patch = new Patch
            {
                Streams = [Stream("a", "box/transmit/1-4", "desk/receive/1-4", "mon/receive/1-4"), Stream("b", "box/transmit/5-8", "desk/receive/5-8")],
            },
        };

        var rows = SheetShow.Build(show).LineChecks;

        Assert.Equal([("desk", true), ("mon", true)], rows[0].Ticks.Select(tick => (tick.DeviceLabel, tick.Arrives)));
        Assert.Equal([("desk", true), ("mon", false)], rows[1].Ticks.Select(tick => (tick.DeviceLabel, tick.Arrives)));
    }

    [Fact]
    public void A_point_that_a_line_lists_twice_is_listed_once()
    {
        var show = SheetShow.Full with
        {
            Lines = [Line("kick", "box-r/in/1", "desk/channel/1", "desk/channel/1") with { From = new() { At = [At("box-r/in/1"), At("box-r/in/1")] } }],
        };
        var sheet = SheetShow.Build(show);
        var row = Assert.Single(sheet.LineChecks);

        Assert.Equal(["SR box input 1"], row.Enters.Select(place => place.ToString()));
        Assert.Single(row.Ticks);
        Assert.Single(sheet.Input("box-r", 1).Lines);
    }

    [Fact]
    public void A_line_that_enters_through_a_split_names_every_input()
    {
        var show = SheetShow.Full with
        {
            Lines = [Line("kick", "box-r/in/1", "desk/channel/1") with { From = new() { At = [At("box-r/in/1"), At("box-l/in/3")] } }],
        };

        var row = Assert.Single(SheetShow.Build(show).LineChecks);

        Assert.Equal(["SR box input 1", "SL box input 3"], row.Enters.Select(place => place.ToString()));
    }

    [Fact]
    public void In_ear_mixes_are_checked_first_then_the_others_in_list_order() =>
        Assert.Equal(["Ears L", "Ears R", "Main L", "Main R", "Subs", "Wedge"], Sheet.OutputChecks.Select(row => row.Name));

    [Fact]
    public void A_mix_has_a_box_for_each_place_and_names_the_place_it_does_not_reach()
    {
        Assert.Equal(
            [new[] { "SR box output 3" }, ["SL box output 3"]],
            Sheet.OutputChecks[4].Places.Select(place => Assert.Single(place.Arrives).Places.Select(at => at.ToString()).ToArray())
        );
        var wedge = Assert.Single(Sheet.OutputChecks[5].Places);
        Assert.Empty(wedge.Arrives);
        Assert.Equal("SL box", wedge.Wanted);
    }

    [Theory]
    [InlineData(true, "Limiter declared.")]
    [InlineData(false, "NO LIMITER: set one first.")]
    [InlineData(null, "No limiter declared: set one first.")]
    public void An_in_ear_check_puts_a_technician_before_the_performer(bool? limiter, string last)
    {
        var show = SheetShow.Full with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box-l/out/5-6") with { Limiter = limiter }] };

        var how = SheetShow.Build(show).OutputChecks[0].How;

        Assert.Equal($"A technician first, low; then the performer. {last}", how);
    }

    [Fact]
    public void A_selection_keeps_only_what_concerns_its_devices_but_every_gap()
    {
        var sheet = SheetShow.Build(SheetShow.Full, new SheetOptions { Devices = [new("box-l")] });

        Assert.Equal(["SL box"], sheet.Devices.Select(device => device.Label));
        Assert.Equal(["Voice"], sheet.LineChecks.Select(row => row.Line.Name));
        Assert.Equal(["Ears L", "Ears R", "Main R", "Subs", "Wedge"], sheet.OutputChecks.Select(row => row.Name));
        Assert.Equal(Sheet.Gaps, sheet.Gaps);
    }

    [Fact]
    public void A_device_that_is_not_in_the_rig_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => SheetShow.Build(SheetShow.Full, new SheetOptions { Devices = [new("box-x")] }));

        Assert.Contains("desk, box-r, box-l, amp", error.Message, StringComparison.Ordinal);
    }
}
