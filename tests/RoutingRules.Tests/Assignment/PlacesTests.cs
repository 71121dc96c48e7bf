using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Assignment;

/// <summary>Where feeds and lines may stand, and where they stand already.</summary>
public class PlacesTests
{
    private static readonly DeviceProfile Rack = Taking("test/rack", DeviceKind.TransmitterRack);
    private static readonly DeviceProfile Wedge = Taking("test/wedge", DeviceKind.Loudspeaker);

    private static readonly DeviceProfile NetworkAmplifier = new()
    {
        Id = new("test/network-amplifier"),
        Kind = DeviceKind.Amplifier,
        Name = "Test amplifier on the network",
        PortGroups =
        [
            Group("out", PortKind.Output, 4) with
            {
                Level = SignalLevel.Speaker,
            },
            Group("receive", PortKind.Receive, 8) with
            {
                BlockSize = 4,
            },
            SmallProfiles.Network(1),
        ],
        Routing = [Entry("receive", "out", RoutingMode.Free)],
        FactoryRoutes = [Factory("receive", 1, 4, "out", 1)],
    };

    private static readonly DeviceProfile Station = new()
    {
        Id = new("test/station"),
        Kind = new("comms-station"),
        Name = "Test comms station",
        PortGroups = [Group("listen", PortKind.Sink, 4), Group("receive", PortKind.Receive, 4) with { BlockSize = 4 }, SmallProfiles.Network(1)],
        Routing = [Entry("receive", "listen", RoutingMode.Free)],
    };

    [Theory]
    [InlineData("wedge", "rack")]
    [InlineData("rack", "wedge")]
    public void An_output_that_also_goes_to_ears_is_taken_for_the_rack_alone(string first, string second)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", Box), ("wedge", Wedge), ("rack", Rack));
        show = show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("stage") }],
                Devices = [.. show.Rig.Devices.Select(device => device.Id.Value == "box" ? device with { Zone = new Id<Zone>("stage") } : device)],
                Cables = [Cable("box/out/1", $"{first}/in/1"), Cable("box/out/1", $"{second}/in/1"), Cable("box/out/2", "wedge/in/2")],
            },
            Feeds =
            [
                FeedTo("by-zone", FeedRole.Monitor, "desk/aux/1") with
                {
                    To = [new() { Zones = [new("stage")] }],
                },
                FeedTo("by-wedge", FeedRole.Monitor, "desk/aux/2", "wedge"),
                FeedTo("ears", FeedRole.InEar, "desk/aux/3", "rack"),
            ],
        };

        Assert.Equal(["by-zone/1 box/out/3", "by-wedge/1 box/out/2", "ears/1 box/out/1"], Places(show));
    }

    [Fact]
    public void What_somebody_routed_is_where_a_feed_stands_and_not_what_leaks_by_a_factory_route()
    {
        var show = Leaking();

        Assert.Equal("box/out/5", Existing(show, 1));
    }

    [Fact]
    public void A_feed_does_not_stand_where_another_is_pinned()
    {
        var show = Leaking();
        show = show with { Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("desk/aux/2", "desk/transmit/2")] } };

        Assert.Equal("box/out/5", Existing(show, 1));
    }

    [Fact]
    public void A_missing_route_is_put_back_and_nobody_moves()
    {
        var result = Promise.Engine.Assign(Leaking());

        Assert.Equal(["sub/1 box/out/2", "mix/1 box/out/5"], result.Placements.Select(placement => $"{placement.Demand} {placement.At}"));
        Assert.Equal([], result.Moved);
    }

    [Fact]
    public void Of_two_that_must_be_spread_only_one_stands_where_both_were_plugged()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box-a", Box), ("box-b", Box)) with
        {
            Feeds = [FeedTo("sub", FeedRole.Sub, "desk/aux/1") with { Spread = true, To = [To("box-a", "box-b"), To("box-a", "box-b")] }],
            Patch = new()
            {
                Streams = [Stream("s", "desk/transmit/1-4", "box-a/receive/1-4")],
                Routes =
                [
                    Route("desk/aux/1", "desk/transmit/1"),
                    Route("desk/aux/1", "desk/transmit/2"),
                    Route(null, "desk/transmit/3"),
                    Route(null, "desk/transmit/4"),
                ],
            },
        };

        var result = Promise.Engine.Assign(show);

        Assert.Equal(["sub/1 box-a/out/1", "sub/2 box-b/out/1"], result.Placements.Select(placement => $"{placement.Demand} {placement.At}"));
        Assert.Equal([], result.Moved);
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
    }

    [Fact]
    public void Talkback_does_not_arrive_where_an_amplifier_plays_by_itself()
    {
        var show = Of(("desk", SmallProfiles.Console), ("pa", NetworkAmplifier), ("station", Station)) with
        {
            Feeds = [Feed("bar", FeedRole.Fill, "desk/aux/1", "pa/out/1"), Feed("talk", FeedRole.Talkback, "desk/aux/8", "station/listen/1")],
        };

        var result = Promise.Engine.Assign(show);

        var tracer = new NaiveTracer(result.Show);
        Assert.Equal([], result.Unplaced);
        Assert.DoesNotContain(
            tracer.Points(PortKind.Receive),
            point => point.Device.Value == "pa" && point.Number <= 4 && tracer.Source(point) == new Point(new("desk"), new("aux"), 8)
        );
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
    }

    [Fact]
    public void Talkback_is_placed_at_no_output_that_leads_to_a_loudspeaker_unless_it_is_pinned_there()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", Box), ("wedge", Wedge));
        show = show with
        {
            Rig = show.Rig with { Cables = [Cable("box/out/1-2", "wedge/in/1-2")] },
            Feeds =
            [
                FeedTo("talk", FeedRole.Talkback, "desk/aux/1", "box"),
                Feed("asked", FeedRole.Talkback, "desk/aux/2", "box/out/1"),
                FeedTo("click", FeedRole.Click, "desk/aux/3", "wedge"),
            ],
        };

        var result = Promise.Engine.Assign(show);

        Assert.Equal(["talk/1 box/out/3", "asked/1 box/out/1"], result.Placements.Select(placement => $"{placement.Demand} {placement.At}"));
        Assert.Equal(
            "asked/1 is pinned to box/out/1, from where loudspeakers play it; ask whether talkback shall be heard there.",
            Assert.Single(result.Notes)
        );
        Assert.Equal(
            "Loudspeakers play whatever is at the 2 points it may take, and click is kept away from them; allow other devices or zones, or pin it "
                + "with `at` where it shall be heard.",
            Assert.Single(result.Unplaced).Reason
        );
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
    }

    [Theory]
    [InlineData("box-a/in/1", "box-a/out/3")]
    [InlineData("box-a/in/1", "box-b/out/3")]
    public void A_line_is_brought_to_an_output(string from, string to)
    {
        var show = Of(("box-a", FreeBox), ("box-b", Box)) with { Lines = [Line("player", from, to)] };

        var once = Promise.Engine.Assign(show);
        var twice = Promise.Engine.Assign(once.Show);

        Assert.Equal([], once.Unplaced);
        Assert.Equal(PointRange.Parse(from)[0], new NaiveTracer(once.Show).Source(PointRange.Parse(to)[0]));
        Assert.Equal(AssignCases.Json(once.Show), AssignCases.Json(twice.Show));
        Assert.Null(AssignCases.Verdict(show, once, new AssignmentOptions()));
    }

    /// <summary>Channel 1 hangs on the left leg and channel 2 on the right one; the list names channel 1 twice.</summary>
    [Fact]
    public void Each_channel_of_a_split_line_stays_on_its_leg_whatever_the_list_repeats()
    {
        var line = Line("vocal", "left/in/1", "desk/channel/1", "desk/channel/1", "desk/channel/2");
        var show = (
            Of(("desk", SmallProfiles.Console), ("left", Box), ("right", Box)) with
            {
                Lines = [line with { From = new() { At = [At("left/in/1"), At("right/in/2")] } }],
            }
        )
            .With(Stream("s1", "left/transmit/1-4", "desk/receive/1-4"), Stream("s2", "right/transmit/1-4", "desk/receive/5-8"))
            .With(Route("desk/receive/1", "desk/channel/1"), Route("desk/receive/6", "desk/channel/2"));

        var result = Promise.Engine.Assign(show);

        Assert.Equal(At("left/in/1")[0], new NaiveTracer(result.Show).Source(At("desk/channel/1")[0]));
        Assert.Equal(At("right/in/2")[0], new NaiveTracer(result.Show).Source(At("desk/channel/2")[0]));
        Assert.Equal(0, result.Objective!.Values[10]);
    }

    [Fact]
    public void No_feed_takes_the_output_that_a_line_is_brought_to_and_it_is_no_spare()
    {
        var box = FreeBox with { PortGroups = [.. FreeBox.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = 3 } : group)] };
        var options = new AssignmentOptions { Spares = 1 };
        var show = Of(("desk", SmallProfiles.Console), ("box", box)) with
        {
            Feeds = [FeedTo("one", FeedRole.Monitor, "desk/aux/1", "box"), FeedTo("two", FeedRole.Monitor, "desk/aux/2", "box")],
            Lines = [Line("player", "box/in/1", "box/out/1") with { Priority = Priority.High }],
        };

        var result = Promise.Engine.Assign(show, options);

        Assert.Equal(["one/1 box/out/2", "player box/in/1"], result.Placements.Select(placement => $"{placement.Demand} {placement.At}"));
        Assert.Equal("two/1", Assert.Single(result.Unplaced).Demand);
        Assert.Null(AssignCases.Verdict(show, result, options));
    }

    [Fact]
    public void A_line_to_a_transmit_slot_shares_its_block_with_what_streams_need()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", FreeBox)) with
        {
            Lines = [Line("left-open", "box/in/1", "box/transmit/1"), Line("voice", "box/in/2", "desk/channel/1")],
        };

        var result = Promise.Engine.Assign(show);

        var tracer = new NaiveTracer(result.Show);
        Assert.Equal([], result.Unplaced);
        Assert.Equal("box/in/1", tracer.Source(PointRange.Parse("box/transmit/1")[0])?.ToString());
        Assert.Equal("box/in/2", tracer.Source(PointRange.Parse("desk/channel/1")[0])?.ToString());
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
    }

    // The mix reaches out/5 by a route, and out/2 because the route of the subwoofers there is missing and a factory route shows.
    private static Show Leaking() =>
        Of(("desk", SmallProfiles.Console), ("box", Box)) with
        {
            Feeds = [Feed("sub", FeedRole.Sub, "desk/main/1", "box/out/2"), FeedTo("mix", FeedRole.Monitor, "desk/aux/2", "box")],
            Patch = new()
            {
                Streams = [Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "desk/transmit/5-8", "box/receive/5-8")],
                Routes = [Route("desk/aux/2", "desk/transmit/5")],
            },
        };

    private static string Existing(Show show, int demand)
    {
        var resolved = Promise.Resolve(show);
        return resolved.Graph.Address(resolved.Demands[demand].Existing).ToString();
    }

    private static Destination To(params string[] devices) => new() { Devices = devices.Select(device => new Id<Device>(device)).ToValueList() };

    private static IEnumerable<string> Places(Show show)
    {
        var result = Promise.Engine.Assign(show);
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
        return result.Placements.Select(placement => $"{placement.Demand} {placement.At}");
    }

    private static DeviceProfile Taking(string id, DeviceKind kind) =>
        new()
        {
            Id = new(id),
            Kind = kind,
            Name = "Test device",
            PortGroups = [Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }],
        };
}
