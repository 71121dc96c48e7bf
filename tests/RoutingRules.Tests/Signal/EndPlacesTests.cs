using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules;
using RoutingRules.Tests.Checking.Rules.Hearing;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Signal.EndShows;

namespace RoutingRules.Tests.Signal;

/// <summary>What counts as somebody's ears, and how signal gets there.</summary>
public sealed class EndPlacesTests
{
    private static readonly InEarLimiterMissing Rule = new();

    private static DeviceProfile Pack { get; } = Profile("test/pack", new DeviceKind("wired-pack"), Group("in", PortKind.Input, 2) with { InEar = true });

    private static DeviceProfile NetworkRack { get; } =
        Profile(
            "test/network-rack",
            DeviceKind.TransmitterRack,
            Group("receive", PortKind.Receive, 8) with
            {
                BlockSize = 4,
            },
            Group("pack", PortKind.Sink, 2)
        ) with
        {
            Routing = [Entry("receive", "pack", RoutingMode.Free)],
        };

    private static DeviceProfile Split { get; } =
        Profile("test/split", DeviceKind.Split, Group("in", PortKind.Input, 2), Group("direct", PortKind.Output, 2), Group("isolated", PortKind.Output, 2)) with
        {
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("direct"),
                },
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("isolated"),
                },
            ],
        };

    [Fact]
    public void A_headphone_output_behind_a_cable_is_in_ear() =>
        ExpectEars(Show([("phones", HeadphoneAmplifier)], "box/out/1", Cable("box/out/1", "phones/in/2")), "phones/out/2");

    [Fact]
    public void An_input_marked_so_is_in_ear_and_the_same_input_without_the_mark_is_not()
    {
        ExpectEars(Show([("pack", Pack)], "box/out/1", Cable("box/out/1", "pack/in/2")), "pack/in/2");
        Expect.None(Rule, Show([("pack", Pack with { PortGroups = [Group("in", PortKind.Input, 2)] })], "box/out/1", Cable("box/out/1", "pack/in/2")));
    }

    [Fact]
    public void The_second_cable_of_an_output_counts_as_the_first()
    {
        var wedge = Profile("test/wedge", DeviceKind.Loudspeaker, Group("in", PortKind.Input, 2));
        ExpectEars(
            Show([("wedge", wedge), ("rack", EarRig.Rack)], "box/out/1", Cable("box/out/1", "wedge/in/1"), Cable("box/out/1", "rack/in/4")),
            "rack/in/4"
        );
    }

    [Fact]
    public void A_passive_split_and_either_leg_of_a_selector_lead_into_the_ears()
    {
        ExpectEars(
            Show([("split", Split), ("rack", EarRig.Rack)], "box/out/1", Cable("box/out/1", "split/in/1"), Cable("split/isolated/1", "rack/in/2")),
            "rack/in/2"
        );
        ExpectEars(
            Show([("select", Selector), ("rack", EarRig.Rack)], "box/out/1", Cable("box/out/1", "select/in-b/1"), Cable("select/out/1", "rack/in/2")),
            "rack/in/2"
        );
    }

    [Fact]
    public void A_network_rack_hears_what_is_routed_to_its_packs_and_not_the_rest_of_the_block()
    {
        var show = Of(("desk", SmallProfiles.Console), ("rack", NetworkRack))
            .With(Stream("s", "desk/transmit/1-4", "rack/receive/1-4"))
            .With(Route("desk/main/1", "desk/transmit/4"), Route("rack/receive/1", "rack/pack/2")) with
        {
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "rack/receive/1") with { Limiter = false }],
        };

        ExpectEars(show, "rack/pack/2");
        Expect.None(new InEarCarriesOther(), show);
        Expect.One(
            new InEarCarriesOther(),
            show.With(Route("desk/main/1", "desk/transmit/4"), Route("rack/receive/1", "rack/pack/2"), Route("rack/receive/4", "rack/pack/1")),
            Severity.Error,
            "/rig/devices/1",
            "rack/pack/1 of an in-ear transmitter carries desk/main/1, which no feed names, and no in-ear feed asks for it.",
            "input=rack/pack/1"
        );
    }

    [Fact]
    public void A_backup_player_behind_the_other_leg_needs_a_feed()
    {
        var show = Show(
            [("player", FreeBox), ("select", Selector), ("rack", EarRig.Rack)],
            "select/in-a/1",
            Cable("box/out/1", "select/in-a/1"),
            Cable("player/out/1", "select/in-b/1"),
            Cable("select/out/1", "rack/in/2")
        );
        show = show.With(Route("player/in/1", "player/out/1")) with { Feeds = [show.Feeds[0] with { Role = FeedRole.InEar, Limiter = true }] };

        Expect.One(
            new InEarCarriesOther(),
            show,
            Severity.Error,
            "/rig/devices/4",
            "rack/in/2 of an in-ear transmitter carries player/in/1, an input without any mix, and no in-ear feed asks for it.",
            "input=rack/in/2"
        );
        Expect.None(new InEarCarriesOther(), show with { Rig = show.Rig with { Cables = [show.Rig.Cables[0], show.Rig.Cables[2]] } });
    }

    [Fact]
    public void A_headphone_output_that_only_the_factory_feeds_is_the_devices_own_until_somebody_names_it()
    {
        var own = SmallProfiles.Console with
        {
            PortGroups = [.. SmallProfiles.Console.PortGroups, Group("phones", PortKind.Output, 2) with { Level = SignalLevel.Headphone }],
            Routing = [.. SmallProfiles.Console.Routing, Entry("main", "phones", RoutingMode.Free)],
            FactoryRoutes = [.. SmallProfiles.Console.FactoryRoutes, Factory("main", 1, 2, "phones", 1)],
        };
        var show = Of(("desk", own)) with { Feeds = [Feed("main", FeedRole.Main, "desk/main/1", "desk/out/1")] };

        Expect.None(new InEarCarriesOther(), show);
        Expect.One(
            new InEarCarriesOther(),
            show.With(Route("desk/main/2", "desk/phones/1")),
            Severity.Error,
            "/rig/devices/0",
            "desk/phones/1 for headphones carries desk/main/2, which no feed names, and no in-ear feed asks for it.",
            "input=desk/phones/1"
        );
        Expect.One(
            new InEarCarriesOther(),
            show with
            {
                Feeds = [Feed("main", FeedRole.Main, "desk/main/1", "desk/phones/1")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'main' (main) goes into somebody's ears at desk/phones/1.",
            "feed=main",
            "output=desk/phones/1"
        );
    }

    [Fact]
    public void A_headphone_amplifier_with_nothing_plugged_in_is_idle()
    {
        Expect.None(new InEarCarriesOther(), Of(("phones", HeadphoneAmplifier)));
    }
}
