using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class KitListTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(10, 1)]
    [InlineData(11, 2)]
    public void One_in_ten_is_spare_and_at_least_one(int lines, int spare)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Lines = [.. Enumerable.Range(1, lines).Select(i => Microphone($"m{i}", "condenser"))],
        };

        Assert.Equal((lines, spare), Found(show, SheetKitKind.Microphone, "condenser"));
    }

    [Fact]
    public void What_others_bring_and_what_is_not_stated_has_no_spare()
    {
        var show = Of(("desk", SmallProfiles.Console)) with
        {
            Lines = [Microphone("a", "condenser") with { SuppliedBy = "band" }, Microphone("b", "condenser"), Microphone("c", null)],
        };

        Assert.Equal(
            [("condenser", "band", 1, 0), ("condenser", null, 1, 1), ("microphone or direct box, which is not stated", null, 1, 0)],
            Kit(show).Where(item => item.Kind == SheetKitKind.Microphone).Select(item => (item.Name, item.SuppliedBy, item.Count, item.Spare))
        );
    }

    [Fact]
    public void A_pair_takes_two_unless_its_words_mean_both()
    {
        var show = Of(("desk", SmallProfiles.Console)) with
        {
            Lines =
            [
                Microphone("a", "condenser") with
                {
                    Width = 2,
                    Stand = "tall boom",
                },
                Microphone("b", "condenser pair") with
                {
                    Width = 2,
                },
                Microphone("c", "two condensers") with
                {
                    Width = 2,
                },
            ],
        };

        Assert.Equal((2, 1), Found(show, SheetKitKind.Microphone, "condenser"));
        Assert.Equal((1, 1), Found(show, SheetKitKind.Microphone, "condenser pair"));
        Assert.Equal((1, 1), Found(show, SheetKitKind.Microphone, "two condensers"));
        Assert.Equal((2, 1), Found(show, SheetKitKind.Stand, "tall boom"));
    }

    [Theory]
    [InlineData("active direct box", LineKind.Line, SheetKitKind.DirectBox)]
    [InlineData("stereo DI", LineKind.Microphone, SheetKitKind.DirectBox)]
    [InlineData("wireless hand-held", LineKind.Line, SheetKitKind.Microphone)]
    [InlineData("ribbon", LineKind.Microphone, SheetKitKind.Microphone)]
    [InlineData("transformer", LineKind.Line, SheetKitKind.Other)]
    public void Equipment_stands_where_a_loader_looks_for_it(string equipment, LineKind kind, SheetKitKind expected)
    {
        var show = Of(("desk", SmallProfiles.Console)) with { Lines = [Microphone("a", equipment) with { Kind = kind }] };

        Assert.Equal(expected, Kit(show).Single(item => item.Name == equipment).Kind);
    }

    [Fact]
    public void A_word_for_no_stand_is_no_stand() => Assert.DoesNotContain(Kit(SheetShow.Full), item => item.Kind == SheetKitKind.Stand);

    [Theory]
    [InlineData(10.0, "network cable, coax, up to 10 m")]
    [InlineData(10.5, "network cable, coax, up to 15 m")]
    [InlineData(501.0, "network cable, coax, over 500 m")]
    [InlineData(null, "network cable, coax, length not stated")]
    public void A_network_cable_is_of_the_next_length_that_reaches(double? metres, string expected)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("run"),
                        Network = new("n"),
                        From = At("desk/net/1"),
                        To = At("box/net/1"),
                        Medium = Medium.Coax,
                        LengthMetres = metres,
                    },
                ],
            },
        };

        Assert.Equal((1, 1), Found(show, SheetKitKind.Cable, expected));
    }

    [Fact]
    public void Cables_of_the_rig_are_looms_and_plugs_without_one_are_cables()
    {
        var kit = Kit(SheetShow.Full);

        // Kick and both keys at the right box, talk at the desk, and voice, which stands nowhere yet.
        Assert.Equal((5, 1), Found(SheetShow.Full, SheetKitKind.Cable, "signal cable to an input, length not stated"));
        var loom = kit.Single(item => item.Name.StartsWith("loom B ", StringComparison.Ordinal));
        Assert.Equal(("loom B from SR box, 2 ways used, length not stated", 1, 0), (loom.Name, loom.Count, loom.Spare));
    }

    [Fact]
    public void Packs_are_one_row_that_names_them()
    {
        var pack = Kit(SheetShow.Full).Single(item => item.Kind == SheetKitKind.Pack);

        Assert.Equal(("pack", 1, 1), (pack.Name, pack.Count, pack.Spare));
        Assert.Equal(["1"], pack.For);
    }

    [Fact]
    public void Chosen_devices_need_only_their_own()
    {
        var kit = SheetShow.Build(SheetShow.Full, new SheetOptions { Devices = [new("box-l")] }).Kit;

        Assert.DoesNotContain(kit, item => item.Name == "boundary microphone");
        Assert.Contains(kit, item => item.Kind == SheetKitKind.Pack);
    }

    [Fact]
    public void A_changed_number_is_marked_with_what_it_was()
    {
        var old = SheetShow.Full with { Lines = [.. SheetShow.Full.Lines, Microphone("two", "boundary microphone")] };
        var sheet = SheetShow.Build(SheetShow.Full, new SheetOptions { Since = ShowResolver.Resolve(old, new ProfileLibrary([])) });

        Assert.Equal("needed 2", sheet.Kit.Single(item => item.Name == "boundary microphone").Change!.Was);
    }

    [Fact]
    public void The_list_says_how_many_to_take()
    {
        var list = SheetLists.Of(SheetShow.Build(SheetShow.Full), SheetListKind.Kit);

        Assert.Equal(["Microphones", "boundary microphone", "", "1", "1", "2", "Kick", ""], list.Rows[0]);
        Assert.Contains(
            "2     boundary microphone",
            TextSheetWriter.Write(SheetShow.Build(SheetShow.Full, new SheetOptions { Parts = [SheetSection.Kit] })),
            StringComparison.Ordinal
        );
    }

    private static Line Microphone(string id, string? equipment) => Line(id, "box/in/1", "desk/channel/1") with { From = new(), Equipment = equipment };

    private static ValueList<SheetKitItem> Kit(Show show) => SheetShow.Build(show).Kit;

    private static (int Count, int Spare) Found(Show show, SheetKitKind kind, string name)
    {
        var item = Kit(show).Single(item => item.Kind == kind && item.Name == name);
        return (item.Count, item.Spare);
    }
}
