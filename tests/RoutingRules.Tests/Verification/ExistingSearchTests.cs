using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class ExistingSearchTests
{
    private static readonly Show Rig = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("box-2", SmallProfiles.Box));

    [Fact]
    public void A_demand_exists_at_the_first_output_that_carries_its_source()
    {
        var show = Patched("desk/aux/5", 2, 4) with { Feeds = [FeedTo("a", FeedRole.Main, "desk/aux/5", "box")] };

        Assert.Equal(["a/1 box/out/2 held"], Existing(show));
    }

    [Fact]
    public void Two_demands_for_one_output_are_not_both_served()
    {
        var show = Patched("desk/aux/5", 2) with
        {
            Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box"), FeedTo("b", FeedRole.Utility, "desk/aux/5", "box")],
        };

        Assert.Equal(["a/1 box/out/2", "b/1 nowhere"], Existing(show));
    }

    [Fact]
    public void The_largest_set_is_taken_even_where_an_earlier_demand_then_stands_further_back()
    {
        var show = Patched("desk/aux/5", 2, 4) with
        {
            Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box"), Feed("b", FeedRole.Utility, "desk/aux/5", "box/out/2")],
        };

        Assert.Equal(["a/1 box/out/4", "b/1 box/out/2"], Existing(show));
    }

    [Fact]
    public void A_pair_and_a_single_demand_do_not_share_a_point()
    {
        var show = Patched("desk/aux/5", 1) with
        {
            Feeds = [FeedTo("single", FeedRole.Utility, "desk/aux/5", "box"), FeedTo("pair", FeedRole.Utility, "desk/aux/5-6", "box")],
        };
        show = show with { Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("desk/aux/6", "desk/transmit/2")] } };

        Assert.Equal(["single/1 box/out/1", "pair/1 nowhere"], Existing(show));
    }

    [Fact]
    public void Usable_points_come_before_dead_ones()
    {
        var show = Patched("desk/aux/5", 2, 4) with
        {
            Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box"), FeedTo("b", FeedRole.Utility, "desk/aux/5", "box")],
        };
        show = show with { Rig = show.Rig with { Unavailable = [new() { At = At("box/out/2") }] } };

        Assert.Equal(["a/1 box/out/4", "b/1 box/out/2"], Existing(show));
    }

    [Fact]
    public void A_pair_that_starts_even_exists_though_it_would_not_be_chosen()
    {
        var show = Patched("desk/aux/5", 2) with { Feeds = [FeedTo("pair", FeedRole.InEar, "desk/aux/5-6", "box")] };
        show = show with { Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("desk/aux/6", "desk/transmit/3")] } };

        Assert.Equal(["pair/1 box/out/2-3 held"], Existing(show));
    }

    [Fact]
    public void A_factory_route_alone_makes_a_main_existing_but_not_held()
    {
        var show = Rig with { Feeds = [FeedTo("main", FeedRole.Main, "desk/main/1", "desk")] };

        Assert.Equal(["main/1 desk/out/1"], Existing(show));
        Assert.Equal(["main/1 desk/out/1 held"], Existing(show.With(Route("desk/main/1", "desk/out/1"))));
    }

    [Fact]
    public void A_line_exists_where_most_of_its_deliveries_come_from()
    {
        var line = new Line
        {
            Id = new("a"),
            Kind = LineKind.Microphone,
            From = new() { Devices = [new("box")] },
            To = [At("desk/channel/1"), At("desk/channel/2"), At("desk/channel/3")],
            Hold = true,
        };
        var show = (Rig with { Lines = [line] })
            .With(Stream("s1", "box/transmit/1-4", "desk/receive/1-4"))
            .With(Route("desk/receive/1", "desk/channel/1"), Route("desk/receive/3", "desk/channel/2"), Route("desk/receive/3", "desk/channel/3"));

        Assert.Equal(["a box/in/3 held"], Existing(show));
    }

    [Fact]
    public void Two_lines_from_one_input_are_not_both_there()
    {
        var show = Rig with
        {
            Lines =
            [
                .. ((string[])["a", "b"]).Select(
                    (id, i) =>
                        new Line
                        {
                            Id = new(id),
                            Kind = LineKind.Microphone,
                            From = new() { Devices = [new("box")] },
                            To = [At($"desk/channel/{i + 1}")],
                        }
                ),
            ],
        };

        Assert.Equal(
            ["a box/in/2", "b nowhere"],
            Existing(
                show.With(Stream("s1", "box/transmit/1-4", "desk/receive/1-4"))
                    .With(Route("desk/receive/2", "desk/channel/1"), Route("desk/receive/2", "desk/channel/2"))
            )
        );
    }

    [Fact]
    public void Outputs_of_a_transmitter_rack_are_taken_by_name_only()
    {
        var rack = SmallProfiles.Amplifier with
        {
            Id = new("test/rack"),
            Kind = DeviceKind.TransmitterRack,
            Through = [],
            PortGroups = [SmallProfiles.Amplifier.PortGroups[0]],
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("rack", rack)) with
        {
            Feeds =
            [
                FeedTo("by-name", FeedRole.InEar, "desk/aux/1", "rack"),
                FeedTo("by-box", FeedRole.InEar, "desk/aux/2", "box"),
                Feed("by-input", FeedRole.InEar, "desk/aux/3", "rack/in/2"),
            ],
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("box/out/3-4", "rack/in/1-2")] } };
        var demands = DemandList.Of(show, new RigFacts(show, _ => null, []), new PatchTrace(new RigFacts(show, _ => null, []), show.Patch));

        Assert.Equal("box/out/3 box/out/4", string.Join(' ', demands[0].Runs));
        Assert.Equal("box/out/1 box/out/2 box/out/5 box/out/6 box/out/7 box/out/8", string.Join(' ', demands[1].Runs));
        Assert.Equal("box/out/4", string.Join(' ', demands[2].Runs));
    }

    [Fact]
    public void Points_to_do_without_come_last()
    {
        var show = Patched("desk/aux/5", 2, 4) with { Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box")] };
        var options = new AssignmentOptions { Without = ["box/out/2"] };

        Assert.Equal("box/out/4", new AssignmentFacts(show, options, _ => null).Demands[0].Existing.ToString());
        Assert.Equal([], Promise.Engine.Assign(show, options).Moved);
    }

    /// <summary>Both entries could read as served with the first at the console and the second behind it, where it can never be placed.</summary>
    [Fact]
    public void What_only_a_cable_brings_comes_last()
    {
        var processor = SmallProfiles.Amplifier with
        {
            Id = new("test/processor"),
            Kind = DeviceKind.Processor,
            PortGroups = [SmallProfiles.Amplifier.PortGroups[0], SmallProfiles.Amplifier.PortGroups[1] with { Level = SignalLevel.Line }],
        };
        var show = Of(("desk", SmallProfiles.Console), ("proc", processor), ("box", SmallProfiles.Box)) with
        {
            Feeds =
            [
                new()
                {
                    Id = new("ears"),
                    Role = FeedRole.InEar,
                    Source = At("desk/aux/5"),
                    To = [new() { Devices = [new("desk"), new("box")] }, new() { Devices = [new("desk"), new("proc")] }],
                },
            ],
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "proc/in/1")] } };
        show = show.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")).With(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/5", "desk/out/1"));

        Assert.Equal(["ears/1 box/out/1 held", "ears/2 desk/out/1 held"], Existing(show));
        Assert.Equal(
            ["box/out/1", "desk/out/1"],
            Promise.Resolve(show).Demands.Select(demand => Promise.Resolve(show).Graph.Address(demand.Existing).ToString())
        );
    }

    // A stream to the box that carries one source in some of its slots.
    private static Show Patched(string source, params int[] slots) =>
        Rig.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")).With([.. slots.Select(slot => Route(source, $"desk/transmit/{slot}"))]);

    private static IEnumerable<string> Existing(Show show) =>
        new AssignmentFacts(show, new AssignmentOptions(), _ => null).Demands.Select(demand =>
            $"{demand.Key} {demand.Existing?.ToString() ?? "nowhere"}{(demand.IsHeld ? " held" : "")}"
        );
}
