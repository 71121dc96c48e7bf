using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class RouteComplaintTests
{
    private static readonly Scene Two = Scene.Paper(1);

    [Fact]
    public void A_sink_takes_one_signal()
    {
        Two.WithRoutes(Route("desk/aux/4", "desk/transmit/1")).ComplainsOnly("desk/transmit/1 takes two signals; keep one route or stream.");
        Two.WithStream("s2", stream => stream with { To = [.. stream.To, new() { At = At("box-r/receive/1-4") }] })
            .Complains("box-r/receive/1 takes two signals");
    }

    [Fact]
    public void A_route_connects_something()
    {
        Two.WithRoutes(Route("desk/aux/1-2", "desk/transmit/7")).ComplainsOnly("The route from desk/aux/1-2 to desk/transmit/7 connects nothing.");
        Two.WithRoutes(Route("desk/aux/1", "box-r/out/1")).ComplainsOnly("The route from desk/aux/1 to box-r/out/1 connects nothing.");
        Two.WithRoutes(Route("desk/aux/9", "desk/transmit/7")).ComplainsOnly("The route from desk/aux/9 to desk/transmit/7 connects nothing.");
    }

    [Fact]
    public void A_receive_slot_takes_no_route() => Two.WithRoutes(Route("box-r/receive/2", "box-r/receive/1")).ComplainsOnly("box-r/receive/1 takes no route.");

    [Fact]
    public void A_fixed_position_cannot_be_cleared() =>
        Two.WithRoutes(Route(null, "box-r/out/3")).ComplainsOnly("box-r/out/3 cannot be cleared: it always carries its own position.");

    [Fact]
    public void A_fixed_position_cannot_take_another_source()
    {
        Two.WithRoutes(Route("box-r/receive/4", "box-r/out/3")).ComplainsOnly("box-r/out/3 cannot take box-r/receive/4: the device does not route that.");
        Scene
            .Paper(4)
            .WithRoutes(Route("box-r/receive/3", "box-r/out/4"))
            .ComplainsOnly("box-r/out/4 cannot take box-r/receive/3: the device does not route that.");
    }

    [Fact]
    public void A_block_of_sinks_takes_a_whole_block_of_sources_in_order()
    {
        var scene = BlockScene(false, Route("box/receive/1-4", "box/out/1-4")).IsValid();

        scene
            .WithRoutes(Route("box/receive/6", "box/out/5"))
            .Complains("box/out/5 and the rest of its block of 2 must take one whole block of box/receive in order.");
        scene
            .WithRoutes(Route("box/receive/5", "box/out/5"))
            .Complains("box/out/5 and the rest of its block of 2 must take one whole block of box/receive in order.");
        scene.WithRoutes(Route("box/receive/5-6", "box/out/5-6")).IsValid();
    }

    [Fact]
    public void Blocks_keep_their_distance_unless_they_may_be_reordered()
    {
        const string Complaint = "box/out/3 and the rest of its block of 2 must keep the same distance to its sources as the other blocks.";
        var swapped = Route("box/receive/7-8", "box/out/3-4");

        BlockScene(false, Route("box/receive/1-2", "box/out/1-2"), swapped).ComplainsOnly(Complaint);
        BlockScene(true, Route("box/receive/1-2", "box/out/1-2"), swapped).IsValid();
    }

    // One feed at out/1 of a box that routes receive slots to outputs in blocks of two.
    private static Scene BlockScene(bool reordering, params Route[] routes)
    {
        var profile = SmallProfiles.FreeBox with
        {
            Id = new("test/box-blocks"),
            Routing = [SmallProfiles.Entry("receive", "out", RoutingMode.Block) with { BlockSize = 2, Reordering = reordering }],
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", profile)) with { Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box")] };
        var result = show.With(Stream("s1", "desk/transmit/5-8", "box/receive/1-4")).With([Route("desk/aux/5", "desk/transmit/5"), .. routes]);
        return new Scene { Show = show, Result = result }.Place("a/1", "box/out/1");
    }
}
