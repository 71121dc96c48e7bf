using RoutingRules.Assignment;
using RoutingRules.Model;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class PlacementRulesTests
{
    [Fact]
    public void A_demand_stands_where_it_may() =>
        Scene.Paper(1).Place("wedge-2/1", "box-l/out/2").Complains("wedge-2/1 stands at box-l/out/2, which is not among the points it may use.");

    [Fact]
    public void A_free_pair_starts_odd() =>
        Scene.Paper(6).Place("ears-1/1", "box/out/4-5").Complains("ears-1/1 stands at box/out/4-5, which is not among the points it may use.");

    [Fact]
    public void Two_demands_do_not_share_a_point() =>
        Scene.Paper(1).Place("wedge-2/1", "box-r/out/1").Complains("wedge-2/1 and wedge-1/1 both stand at box-r/out/1");

    [Fact]
    public void Nobody_stands_where_another_is_pinned() =>
        Scene
            .Paper(1)
            .WithFeed("wedge-2", feed => feed with { To = [new() { At = At("box-r/out/1") }] })
            .Complains("wedge-1/1 stands at box-r/out/1, which the show gives to another demand.");

    [Theory]
    [InlineData("box-l")]
    [InlineData("box-l/out/1")]
    public void Nothing_stands_at_what_is_excluded(string without) =>
        (Scene.Paper(1) with { Options = new AssignmentOptions { Without = [without] } }).Complains("wedge-1/2 stands at box-l/out/1, which must not be used.");

    [Fact]
    public void Nothing_stands_at_a_dead_point_but_a_pin()
    {
        var dead = Scene.Paper(6).WithRig(rig => rig with { Unavailable = [new UnavailablePoints { At = At("box/out/3-4") }] });

        dead.ComplainsOnly("drum-sub/1 stands at box/out/4, which is dead; only a pin may do that.");
    }

    [Fact]
    public void Nothing_stands_at_a_reserved_point_but_a_pin()
    {
        var reserved = Scene.Paper(6).WithRig(rig => rig with { Reserved = [new ReservedPoints { At = At("box/out/2-4") }] });

        reserved.ComplainsOnly("drum-sub/1 stands at box/out/4, which is reserved; only a pin may do that.");
    }

    [Fact]
    public void An_existing_demand_at_a_dead_point_must_leave() =>
        Scene
            .Paper(16)
            .WithRig(rig => rig with { Unavailable = [new UnavailablePoints { At = At("box/out/4") }] })
            .ComplainsOnly("mix-2/1 stands at box/out/4, which is dead; only a pin may do that.");

    [Fact]
    public void Spares_stay_free_where_something_new_is_placed() =>
        Scene
            .Paper(11)
            .WithRoutes(Route("desk/aux/5", "desk/transmit/7"))
            .Place("new-3/1", "box-l/out/3")
            .ComplainsOnly("box-l/out keeps 0 spare outputs where 1 are asked for.");

    [Fact]
    public void A_feed_that_is_spread_uses_a_device_once()
    {
        var scene = Scene
            .Paper(1)
            .WithFeed("wedge-1", feed => feed with { To = [feed.To[0], feed.To[0]] })
            .WithStream("s2", _ => null)
            .WithPatch(patch => patch with { Routes = [Route("desk/aux/1-2", "desk/transmit/1-2"), Route("desk/aux/1", "desk/transmit/3")] })
            .Place("wedge-1/2", "box-r/out/3")
            .IsValid();

        scene.WithFeed("wedge-1", feed => feed with { Spread = true }).ComplainsOnly("wedge-1/2 and wedge-1/1 share box-r, but the feed asks to be spread.");
    }

    [Fact]
    public void Feeds_that_must_stay_apart_do_not_share_a_device() =>
        Scene.Paper(12).Place("wedge-2/1", "box-b/out/2").Complains("wedge-1/1 and wedge-2/1 share the device box-b and must not.");

    [Fact]
    public void Feeds_that_must_stay_apart_do_not_share_a_supply() =>
        Scene.Paper(12).Place("second/1", "box-b/out/2").Complains("second/1 and first/1 share a power supply and must not.");
}
