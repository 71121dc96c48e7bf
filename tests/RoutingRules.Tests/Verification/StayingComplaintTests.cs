using RoutingRules.Model;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class StayingComplaintTests
{
    private static readonly Scene Kept = Scene.Paper(8);

    [Fact]
    public void A_kept_stream_stays() =>
        Kept.WithStream("s-tape", _ => null).ComplainsOnly("s-tape must stay as it is: it is kept, or no demand has to do with its receivers.");

    [Fact]
    public void A_stream_whose_receivers_no_demand_mentions_stays() =>
        Kept.WithStream("s-rec", _ => null).ComplainsOnly("s-rec must stay as it is: it is kept, or no demand has to do with its receivers.");

    [Fact]
    public void The_contents_of_a_stream_that_stays_do_not_change()
    {
        Kept.WithPatch(patch =>
                patch with
                {
                    Routes = [.. patch.Routes.Where(route => route.To != At("desk/transmit/7")), Route("desk/aux/5", "desk/transmit/7")],
                }
            )
            .ComplainsOnly("s-tape must stay as it is, but desk/transmit/7 carries desk/aux/5 instead of desk/aux/6.");
        Kept.WithRoutes(Route("desk/aux/2", "desk/transmit/8"))
            .ComplainsOnly("s-tape must stay as it is, but desk/transmit/8 carries desk/aux/2 instead of silence.");
    }

    [Fact]
    public void A_stream_that_stays_keeps_its_receivers() =>
        Kept.WithStream("s-tape", stream => stream with { To = [] }).Complains("s-tape must stay as it is, but rec-b/receive/3 no longer takes it.");

    [Fact]
    public void A_receiver_nobody_mentions_stays_while_the_contents_are_the_same() =>
        Kept.WithStream("s-box", stream => stream with { To = stream.To.Where(receiver => receiver.At.Device.Value != "rec").ToValueList() })
            .Complains("rec/receive/3 no longer takes s-box, whose contents have not changed; leave it in.");

    [Fact]
    public void A_receiver_nobody_mentions_leaves_when_the_contents_change() =>
        Kept.WithRoutes(Route("desk/aux/2", "desk/transmit/2"))
            .Complains("rec/receive/3 still takes s-box, whose contents have changed, though no demand speaks of rec.");

    [Fact]
    public void A_receiver_nobody_mentions_takes_nothing_new() =>
        Kept.WithStream("s-box", stream => stream with { To = stream.To.Where(receiver => receiver.At.Device.Value != "rec").ToValueList() })
            .WithStream("s-tape", stream => stream with { To = [.. stream.To, new() { At = At("rec/receive/3-4") }] })
            .Complains("rec/receive/3 takes a stream that no demand asks for.");

    [Fact]
    public void A_held_demand_that_could_stay_does_not_move()
    {
        var held = Scene.Paper(18).IsValid();

        held.WithPatch(patch => patch with { Routes = [Route("desk/main/1", "desk/transmit/1"), .. patch.Routes.Skip(1)] })
            .Place("main/1", "box/out/1")
            .ComplainsOnly("main/1 is held at box/out/2 and was moved, though it could have stayed.");
    }

    [Fact]
    public void A_held_demand_at_a_dead_point_may_move()
    {
        var dead = Scene.Paper(18).WithRig(rig => rig with { Unavailable = [new UnavailablePoints { At = At("box/out/2") }] });

        dead.WithPatch(patch => patch with { Routes = [Route("desk/main/1", "desk/transmit/1"), .. patch.Routes.Skip(1)] })
            .Place("main/1", "box/out/1")
            .IsValid();
    }

    [Fact]
    public void A_held_demand_yields_to_a_pin_on_its_point()
    {
        var pinned = Scene.Paper(18).WithFeed("wedge", feed => feed with { To = [new() { At = At("box/out/2") }] });

        pinned
            .WithPatch(patch =>
                patch with
                {
                    Routes =
                    [
                        Route("desk/main/1", "desk/transmit/1"),
                        Route("desk/aux/2", "desk/transmit/2"),
                        Route("desk/aux/1", "desk/transmit/4"),
                        Route("desk/aux/5-6", "desk/transmit/5-6"),
                    ],
                }
            )
            .Place("main/1", "box/out/1")
            .Place("wedge/1", "box/out/2")
            .IsValid();
    }
}
