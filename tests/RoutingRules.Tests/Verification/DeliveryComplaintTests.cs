using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class DeliveryComplaintTests
{
    private static readonly Scene Two = Scene.Paper(1);

    [Fact]
    public void A_placed_demand_arrives_at_its_place() =>
        Two.Place("wedge-2/1", "box-r/out/3").Complains("wedge-2/1 is said to be at box-r/out/3, but box-r/out/3 carries silence instead of desk/aux/2.");

    [Fact]
    public void Swapped_outputs_are_seen() =>
        Two.WithPatch(patch =>
                patch with
                {
                    Routes = [Route("desk/aux/2", "desk/transmit/1"), Route("desk/aux/1", "desk/transmit/2"), Route("desk/aux/1", "desk/transmit/5")],
                }
            )
            .Complains("wedge-1/1 is said to be at box-r/out/1, but box-r/out/1 carries desk/aux/2 instead of desk/aux/1.");

    [Fact]
    public void A_pair_that_is_swapped_is_seen() =>
        Scene
            .Paper(6)
            .WithPatch(patch =>
                patch with
                {
                    Routes = [Route("desk/aux/1", "desk/transmit/3"), Route("desk/aux/2", "desk/transmit/2"), .. patch.Routes.Skip(1)],
                }
            )
            .Complains("side-fill/1 is said to be at box/out/2-3, but box/out/2 carries desk/aux/2 instead of desk/aux/1.");

    [Fact]
    public void A_pair_comes_in_one_stream() =>
        Scene
            .Paper(19)
            .WithPatch(patch =>
                patch with
                {
                    Streams =
                    [
                        patch.Streams[0] with
                        {
                            To = [new() { At = At("box-r/receive/1-4"), Channels = new(1, 4) }],
                        },
                        patch.Streams[1] with
                        {
                            To = [new() { At = At("box-r/receive/5-8"), Channels = new(1, 4) }],
                        },
                    ],
                    Routes = [Route("desk/aux/1", "desk/transmit/4"), Route("desk/aux/2", "desk/transmit/9")],
                }
            )
            .Complains("side-fill/1 is said to be at box-r/out/4-5, but the two sides of box-r/out/4-5 do not come in one stream.");

    [Fact]
    public void Nothing_excluded_is_on_the_way()
    {
        (Two with { Options = new AssignmentOptions { Without = ["desk/transmit/2"] } }).Complains(
            "wedge-2/1 is said to be at box-r/out/2, but desk/transmit/2 is on the path and must not be used."
        );
        (Two with { Options = new AssignmentOptions { Without = ["desk"] } }).Complains("desk/transmit/1 is on the path and must not be used");
    }

    [Fact]
    public void No_dead_slot_is_on_the_way() =>
        Two.WithRig(rig => rig with { Unavailable = [new UnavailablePoints { At = At("desk/transmit/2") }] })
            .Complains("wedge-2/1 is said to be at box-r/out/2, but desk/transmit/2 is on the path and is dead.");

    [Fact]
    public void No_reserved_slot_is_on_the_way() =>
        Two.WithRig(rig => rig with { Reserved = [new ReservedPoints { At = At("box-r/receive/2") }] })
            .Complains("wedge-2/1 is said to be at box-r/out/2, but box-r/receive/2 is on the path and is reserved.");

    [Fact]
    public void A_device_routes_only_what_its_profile_allows() =>
        Two.WithRig(rig =>
                rig with
                {
                    Profiles = rig.Profiles.Select(profile => profile.Kind == DeviceKind.Console ? profile with { Routing = [] } : profile).ToValueList(),
                }
            )
            .Complains("wedge-1/1 is said to be at box-r/out/1, but desk/transmit/1 takes desk/aux/1, which the device cannot route.");

    [Fact]
    public void A_line_reaches_a_sink() =>
        Scene
            .Paper(20)
            .With(show => show with { Lines = [show.Lines[0] with { To = [At("desk/channel/9")] }, .. show.Lines.Skip(1)] })
            .Complains("kick is said to be at box-n/in/1, but reaches none of its sinks: desk/channel/9 does not fit box-n/in/1.");

    [Fact]
    public void A_feed_does_not_come_by_a_cable()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.FreeBox)) with
        {
            Feeds = [Feed("a", FeedRole.Utility, "desk/main/1", "desk/out/1"), Feed("b", FeedRole.Utility, "desk/main/1", "box/out/1")],
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "box/in/1")] } };
        var scene = new Scene { Show = show, Result = show.With(Route("box/in/1", "box/out/1")) }
            .Place("a/1", "desk/out/1")
            .Place("b/1", "box/out/1");

        scene.Complains("b/1 is said to be at box/out/1, but box/in/1 gets it by a cable from desk/out/1 instead of by the network.");
    }

    [Fact]
    public void Nothing_is_sent_on_from_a_device_that_received_it()
    {
        var relay = SmallProfiles.FreeBox with
        {
            Id = new("test/relay"),
            Routing = [.. SmallProfiles.FreeBox.Routing, SmallProfiles.Entry("receive", "transmit", RoutingMode.Free)],
        };
        var show = Of(("desk", SmallProfiles.Console), ("relay", relay), ("box", SmallProfiles.FreeBox)) with
        {
            Feeds = [Feed("a", FeedRole.Utility, "desk/aux/5", "box/out/1")],
        };
        var result = show.With(Stream("s1", "desk/transmit/1-4", "relay/receive/1-4"), Stream("s2", "relay/transmit/1-4", "box/receive/1-4"))
            .With(Route("desk/aux/5", "desk/transmit/1"), Route("relay/receive/1", "relay/transmit/1"), Route("box/receive/1", "box/out/1"));

        new Scene { Show = show, Result = result }
            .Place("a/1", "box/out/1")
            .Complains("desk/aux/5 reaches box/out/1 over 2 network hops in a row, and one is the most.");
    }
}
