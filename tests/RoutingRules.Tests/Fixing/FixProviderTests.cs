using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Checking.Rules.Words;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Fixing.FixExpectations;

namespace RoutingRules.Tests.Fixing;

/// <summary>What each provider offers: title, safety and edits; the rule no longer finds what was mended.</summary>
public sealed class FixProviderTests
{
    private static Show Pair => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

    private static Show Sent(params Route[] routes) => Pair.With(routes);

    [Fact]
    public void A_route_at_a_fixed_sink_is_taken_out_and_the_rest_of_its_run_stays() =>
        Expect(
            new RouteWithoutEffect(),
            Of(
                    (
                        "box",
                        SmallProfiles.Box with
                        {
                            Routing = [.. SmallProfiles.Box.Routing, SmallProfiles.Entry("in", "out", RoutingRules.Profiles.RoutingMode.Free)],
                        }
                    )
                )
                .With(Route(null, "box/transmit/2-3")),
            FixSafety.Safe,
            "Take out the route to box/transmit/2-3, which has no effect",
            "take out /patch/routes/0: { \"from\": null, \"to\": \"box/transmit/2-3\" }"
        );

    [Fact]
    public void An_unused_part_of_a_route_is_cut_off() =>
        Expect(
            new RouteUnused(),
            Sent(Route("desk/aux/3-6", "desk/transmit/3-6")),
            FixSafety.Safe,
            "Take out the route to desk/transmit/5-6, which is not sent",
            "change /patch/routes/0: { \"from\": \"desk/aux/3-6\", \"to\": \"desk/transmit/3-6\" } to { \"from\": \"desk/aux/3-4\", \"to\": "
                + "\"desk/transmit/3-4\" }"
        );

    [Fact]
    public void A_second_route_that_says_the_same_is_taken_out_safely() =>
        Expect(
            new SinkClaimedTwice(),
            Sent(Route("desk/aux/1-4", "desk/transmit/1-4"), Route("desk/aux/2", "desk/transmit/2")),
            FixSafety.Safe,
            "Take out the second route to desk/transmit/2; the first one says the same",
            "take out /patch/routes/1: { \"from\": \"desk/aux/2\", \"to\": \"desk/transmit/2\" }"
        );

    [Fact]
    public void A_second_route_that_says_something_else_is_no_safe_matter_and_leaves_two_halves() =>
        Expect(
            new SinkClaimedTwice(),
            Sent(Route("desk/aux/8", "desk/transmit/2"), Route("desk/aux/1-3", "desk/transmit/1-3")),
            FixSafety.Unsafe,
            "Take out the later route to desk/transmit/2; the first one counts",
            "change /patch/routes/1: { \"from\": \"desk/aux/1-3\", \"to\": \"desk/transmit/1-3\" } to { \"from\": \"desk/aux/1\", \"to\": "
                + "\"desk/transmit/1\" }",
            "put in at /patch/routes/2: { \"from\": \"desk/aux/3\", \"to\": \"desk/transmit/3\" }"
        );

    [Fact]
    public void Two_cables_into_one_input_are_left_to_a_person()
    {
        var show = Of(("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier)).Cables(Cable("box/out/1", "amp/in/1"), Cable("box/out/2", "amp/in/1"));
        var fix = Assert.Single(Offers(new SinkClaimedTwice(), show));
        Assert.Equal(FixSafety.Manual, fix.Safety);
        Assert.Equal(2, fix.Choices.Count);
    }

    [Fact]
    public void An_unheard_stream_is_taken_out_or_with_its_routes()
    {
        var show = Pair.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8"))
            .With(Route("desk/aux/5", "desk/transmit/5"));
        const string removal = "take out /patch/streams/1: { \"id\": \"s2\", \"network\": \"net\", \"from\": \"desk/transmit/5-8\" }";
        var offers = Expect(new StreamWithoutReceiver(), show, FixSafety.Safe, "Take out stream 's2', which nobody receives", removal);
        Assert.Equal(
            ["take out /patch/routes/0: { \"from\": \"desk/aux/5\", \"to\": \"desk/transmit/5\" }", removal],
            offers[1].Edits.Select(ShowText.Describe)
        );
        Assert.Equal(FixSafety.Manual, offers[2].Safety);
    }

    [Fact]
    public void What_is_routed_from_nothing_is_taken_out() =>
        Expect(
            new RouteDangling(),
            Sent(Route("desk/receive/5", "desk/channel/1")),
            FixSafety.Unsafe,
            "Take out what is routed from desk/receive/5, where nothing arrives",
            "take out /patch/routes/0: { \"from\": \"desk/receive/5\", \"to\": \"desk/channel/1\" }"
        );

    [Fact]
    public void A_swapped_pair_is_exchanged_where_its_sources_are_chosen() =>
        Expect(
            new PairSwapped(),
            Sent(Route("desk/aux/2", "desk/transmit/1"), Route("desk/aux/1", "desk/transmit/2")) with
            {
                Feeds = [Feed("p", FeedRole.Monitor, "desk/aux/1-2", "box/out/1-2")],
            },
            FixSafety.Unsafe,
            "Exchange the sources of desk/transmit/1 and desk/transmit/2, so that box/out/1-2 gets left first",
            "take out /patch/routes/1: { \"from\": \"desk/aux/1\", \"to\": \"desk/transmit/2\" }",
            "take out /patch/routes/0: { \"from\": \"desk/aux/2\", \"to\": \"desk/transmit/1\" }",
            "put in at /patch/routes/0: { \"from\": \"desk/aux/1-2\", \"to\": \"desk/transmit/1-2\" }"
        );

    [Fact]
    public void A_stray_is_cleared_at_the_nearest_place_that_can_be() =>
        Expect(
            new OutputStray(),
            Sent(Route("desk/aux/1-2", "desk/transmit/1-2"), Route(null, "desk/transmit/3-4"), Route(null, "desk/out/1-2")) with
            {
                Feeds = [Feed("p", FeedRole.Monitor, "desk/aux/1", "box/out/1")],
            },
            FixSafety.Unsafe,
            "Set box/out/2 to nothing",
            "change /patch/routes/0: { \"from\": \"desk/aux/1-2\", \"to\": \"desk/transmit/1-2\" } to { \"from\": \"desk/aux/1\", \"to\": "
                + "\"desk/transmit/1\" }",
            "put in at /patch/routes/3: { \"from\": null, \"to\": \"desk/transmit/2\" }"
        );

    [Fact]
    public void A_displaced_run_is_shifted_back_as_one() =>
        Expect(
            new RunDisplaced(),
            Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
                .With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "desk/transmit/5-8", "box/receive/5-8"))
                .With(Route("desk/aux/1-3", "desk/transmit/2-4"), Route(null, "desk/transmit/1")) with
            {
                Feeds = [.. Enumerable.Range(1, 3).Select(n => Feed($"f{n}", FeedRole.Monitor, $"desk/aux/{n}", $"box/out/{n}"))],
            },
            FixSafety.Unsafe,
            "Shift what arrives at box/out/2-4 to box/out/1-3",
            "take out /patch/routes/1: { \"from\": null, \"to\": \"desk/transmit/1\" }",
            "take out /patch/routes/0: { \"from\": \"desk/aux/1-3\", \"to\": \"desk/transmit/2-4\" }",
            "put in at /patch/routes/0: { \"from\": \"desk/aux/1-3\", \"to\": \"desk/transmit/1-3\" }",
            "put in at /patch/routes/1: { \"from\": null, \"to\": \"desk/transmit/4\" }"
        );

    [Fact]
    public void A_feed_that_lacks_one_free_route_gets_it() =>
        Expect(
            new FeedNotDelivered(),
            Sent(Route(null, "desk/transmit/1-4")) with
            {
                Feeds = [Feed("p", FeedRole.Monitor, "desk/aux/7", "box/out/3")],
            },
            FixSafety.Unsafe,
            "Route desk/aux/7 to desk/transmit/3",
            "change /patch/routes/0: { \"from\": null, \"to\": \"desk/transmit/1-4\" } to { \"from\": null, \"to\": \"desk/transmit/1-2\" }",
            "put in at /patch/routes/1: { \"from\": null, \"to\": \"desk/transmit/4\" }",
            "put in at /patch/routes/2: { \"from\": \"desk/aux/7\", \"to\": \"desk/transmit/3\" }"
        );

    [Fact]
    public void A_feed_missing_at_one_place_is_brought_there() =>
        Expect(
            new FanOutLost(),
            Sent(Route("desk/aux/7", "desk/transmit/3"), Route(null, "desk/transmit/4")) with
            {
                Feeds = [Feed("p", FeedRole.Monitor, "desk/aux/7", "box/out/3", "box/out/4")],
            },
            FixSafety.Unsafe,
            "Route desk/aux/7 to desk/transmit/4",
            "take out /patch/routes/1: { \"from\": null, \"to\": \"desk/transmit/4\" }",
            "put in at /patch/routes/1: { \"from\": \"desk/aux/7\", \"to\": \"desk/transmit/4\" }"
        );

    [Fact]
    public void A_receiver_that_is_not_heard_is_taken_out() =>
        Expect(
            new ReceiveBlocksOverlap(),
            Pair.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8", "box/receive/1-4")),
            FixSafety.Unsafe,
            "Take the receiver at box/receive/1-4 out of stream 's2', which is not heard there",
            "take out /patch/streams/1/to/1: { \"at\": \"box/receive/1-4\" }"
        );

    [Fact]
    public void The_only_other_device_becomes_backup_of_the_clock() =>
        Expect(
            new ClockBackupMissing(),
            NetworkShow
                .Boxes("a")
                .With(NetworkShow.Link("l", "desk/net/1", "a/net/1"))
                .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"))
                .With(NetworkShow.Clock("c", "desk")),
            FixSafety.Unsafe,
            "Name a as backup of clock 'c'",
            "change /rig/clocks/0: { \"id\": \"c\", \"sampleRate\": 48000, \"leader\": \"desk\" } to { \"id\": \"c\", \"sampleRate\": 48000, "
                + "\"leader\": \"desk\", \"backup\": \"a\" }"
        );

    [Fact]
    public void A_doubtful_medium_and_transport_are_written_as_meant()
    {
        var show = Sent().With(new Transport("avb"));
        Expect(
            new WordDoubtful(),
            show,
            FixSafety.Unsafe,
            "Write 'avtp-class-a' for the transport 'avb' of network net",
            "change /rig/networks/0: { \"id\": \"net\", \"transport\": \"avb\" } to { \"id\": \"net\", \"transport\": \"avtp-class-a\" }"
        );
    }
}
