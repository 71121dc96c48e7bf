using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Hearing.EarRig;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class InEarCarriesOtherTests
{
    private static readonly InEarCarriesOther Rule = new();

    private static Feed Main => Feed("main", FeedRole.Main, "desk/main/1", "desk/out/1");

    [Fact]
    public void The_main_mix_at_the_pin_of_an_in_ear_feed_is_an_error_and_told_once()
    {
        var show = EarRig
            .Show(Main, Ears("ears", "desk/aux/1", "box/out/1"))
            .With(Route("desk/main/1", "desk/transmit/1"), Route(null, "desk/transmit/2-4"), Route(null, "desk/out/2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/1/to/0",
            "box/out/1 is for in-ear feed 'ears' but carries desk/main/1, the main mix.",
            "output=box/out/1",
            "feed=ears"
        );
        Expect.None(new FeedNotDelivered(), show);
        Expect.None(new OutputStray(), show);
    }

    [Fact]
    public void Talkback_at_inputs_of_a_rack_that_no_feed_uses_is_an_error_and_no_stray()
    {
        var show = EarRig
            .Show(Feed("talk", FeedRole.Talkback, "desk/aux/8", "box/out/8"))
            .With(
                Route("desk/aux/8", "desk/transmit/2"),
                Route("desk/aux/8", "desk/transmit/8"),
                Route(null, "desk/transmit/1"),
                Route(null, "desk/transmit/3-4"),
                Route(null, "desk/out/1-2")
            );

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/rig/devices/2",
            "rack/in/2 of an in-ear transmitter carries desk/aux/8, talkback, click or comms, and no in-ear feed asks for it.",
            "input=rack/in/2"
        );
        Expect.None(new OutputStray(), show);
    }

    [Fact]
    public void A_bare_input_in_the_ears_is_an_error()
    {
        var show = Of(("box", SmallProfiles.FreeBox), ("rack", Rack)).With(Route("box/in/3", "box/out/1"));
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Cables = [Cable("box/out/1", "rack/in/1")] },
            },
            Severity.Error,
            "/rig/devices/1",
            "rack/in/1 of an in-ear transmitter carries box/in/3, an input without any mix, and no in-ear feed asks for it.",
            "input=rack/in/1"
        );
    }

    [Fact]
    public void In_ear_mixes_other_mixes_and_idle_inputs_are_left_to_other_rules()
    {
        Expect.None(Rule, EarRig.Show(Ears("ears", "desk/aux/1-2", "rack/in/1-2")).With(Route(null, "desk/transmit/3-4")));
        Expect.None(
            Rule,
            EarRig.Show(Ears("ears", "desk/aux/1", "box/out/2"), Ears("other", "desk/aux/2", "box/out/8")).With(Route(null, "desk/transmit/3-4"))
        );
        Expect.None(
            Rule,
            EarRig
                .Show(Feed("wedge", FeedRole.Monitor, "desk/aux/1", "box/out/8"))
                .With(Route(null, "desk/transmit/1-4"), Route("desk/aux/1", "desk/transmit/8"))
        );
        Expect.None(Rule, EarRig.Show(Main).With(Route(null, "desk/transmit/1-4")));
    }

    [Theory]
    [InlineData("main")]
    [InlineData("sub")]
    [InlineData("fill")]
    [InlineData("delay")]
    [InlineData("record")]
    [InlineData("broadcast")]
    [InlineData("talkback")]
    [InlineData("comms")]
    [InlineData("click")]
    [InlineData("evacuation")]
    public void A_feed_for_others_that_is_placed_at_a_rack_is_an_error_with_and_without_a_limiter(string role)
    {
        var show = EarRig
            .Show(Feed("mix", new FeedRole(role), "desk/aux/1", "rack/in/1") with { Limiter = true })
            .With(Route(null, "desk/transmit/2-4"), Route(null, "desk/out/1-2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            $"Feed 'mix' ({role}) goes into somebody's ears at rack/in/1 by way of box/out/1.",
            "feed=mix",
            "output=box/out/1"
        );
        Expect.None(new InEarLimiterMissing(), show);
        Expect.None(new OutputStray(), show);
    }

    [Fact]
    public void A_feed_for_others_that_is_only_meant_for_a_rack_is_an_error_and_told_once()
    {
        var pinned = EarRig.Show(Feed("mix", FeedRole.Record, "desk/aux/8", "rack/in/1")).With(Route(null, "desk/transmit/1-4"));
        Expect.One(
            Rule,
            pinned,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'mix' (record) goes into somebody's ears at rack/in/1 by way of box/out/1.",
            "feed=mix",
            "output=box/out/1"
        );
        Expect.None(new FeedNotDelivered(), pinned);

        var open = EarRig.Show(FeedTo("mix", FeedRole.Sub, "desk/aux/8", "rack")).With(Route(null, "desk/transmit/1-4"));
        Expect.One(Rule, open, Severity.Error, "/feeds/0/to/0", "Feed 'mix' (sub) goes into somebody's ears at rack/in/1.", "feed=mix", "output=rack/in/1");
    }

    [Theory]
    [InlineData("in-ear")]
    [InlineData("iem")]
    [InlineData("monitor")]
    [InlineData("utility")]
    [InlineData("assistive")]
    public void A_mix_that_may_be_for_ears_and_declares_a_limiter_is_fine(string role)
    {
        var show = EarRig.Show(Feed("mix", new FeedRole(role), "desk/aux/1", "rack/in/1") with { Limiter = true }).With(Route(null, "desk/transmit/2-4"));
        Expect.None(Rule, show);
        Expect.None(new InEarLimiterMissing(), show);
    }

    [Fact]
    public void A_player_cabled_straight_into_a_rack_is_an_error()
    {
        var show = Of(("player", SmallProfiles.Console), ("rack", Rack));
        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Cables = [Cable("player/out/1", "rack/in/3")] },
            },
            Severity.Error,
            "/rig/devices/1",
            "rack/in/3 of an in-ear transmitter carries player/main/1, which no feed names, and no in-ear feed asks for it.",
            "input=rack/in/3"
        );
    }

    [Theory]
    [InlineData("main", "the main mix")]
    [InlineData("sub", "the bus of 'mix' (sub)")]
    [InlineData("record", "the bus of 'mix' (record)")]
    [InlineData("monitor", "the bus of 'mix' (monitor)")]
    public void A_mix_for_others_that_strays_to_a_spare_rack_input_is_an_error_and_no_stray(string role, string what)
    {
        var show = EarRig
            .Show(Feed("mix", new FeedRole(role), "desk/aux/1", "box/out/8"))
            .With(Route(null, "desk/transmit/2-4"), Route("desk/aux/1", "desk/transmit/8"), Route(null, "desk/out/1-2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/rig/devices/2",
            $"rack/in/1 of an in-ear transmitter carries desk/aux/1, {what}, and no in-ear feed asks for it.",
            "input=rack/in/1"
        );
        Expect.None(new OutputStray(), show);
        Expect.None(new FeedDeliveredElsewhere(), show);
    }

    [Fact]
    public void A_bus_that_no_feed_names_at_a_spare_rack_input_is_an_error() =>
        Expect.One(
            Rule,
            EarRig.Show(Ears("ears", "desk/aux/1-2", "rack/in/1-2")),
            Severity.Error,
            "/rig/devices/2",
            "rack/in/3-4 of an in-ear transmitter carry desk/aux/3-4, which no feed names, and no in-ear feed asks for it.",
            "input=rack/in/3-4"
        );
}
