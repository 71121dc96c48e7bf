using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class StreamPoorlyFilledTests
{
    private static readonly StreamPoorlyFilled Rule = new();

    /// <summary>Two streams of 4 to a free box; the console can send 2. Nothing is routed by the factory.</summary>
    private static Show Two(params (string Bus, string Slot)[] routes) =>
        NetworkShow
            .Boxes("a")
            .WithProfile("desk", profile => profile with { FactoryRoutes = [] })
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "a/receive/5-8"))
            .With([.. routes.Select(route => Route($"desk/{route.Bus}", $"desk/{route.Slot}"))]);

    [Fact]
    public void One_signal_in_a_stream_of_its_own_is_told_at_sender_and_receiver()
    {
        var findings = RuleTester.Findings(Rule, Two(("aux/1-3", "transmit/1-3"), ("aux/4", "transmit/5")));

        Assert.Equal(2, findings.Count);
        Expect.Finding(
            findings[0],
            Rule,
            Severity.Note,
            "/patch/streams/1",
            "a receives 2 of the 2 streams it can, but of stream 's2' only 1 of 4 slots carry signal: they would fit into 's1', which has 1 free.",
            "receiver=a",
            "stream=s2"
        );
        Expect.Finding(
            findings[1],
            Rule,
            Severity.Note,
            "/patch/streams/1",
            "desk sends 2 of the 2 streams it can, but of stream 's2' only 1 of 4 slots carry signal: they would fit into 's1', which has 1 free.",
            "sender=desk",
            "stream=s2"
        );
    }

    [Fact]
    public void Two_of_four_slots_are_not_few_unless_set_so()
    {
        var show = Two(("aux/1-2", "transmit/1-2"), ("aux/4-5", "transmit/5-6"));

        Expect.None(Rule, show);
        Assert.Equal(2, NetworkShow.Set(Rule, show, "fewPercent", 50).Count);
    }

    [Fact]
    public void A_stream_that_would_fit_nowhere_else_is_left_alone() => Expect.None(Rule, Two(("aux/1-4", "transmit/1-4"), ("aux/5", "transmit/5")));

    [Fact]
    public void Far_from_the_limit_nothing_is_said()
    {
        var show = Two(("aux/1-3", "transmit/1-3"), ("aux/4", "transmit/5"));
        var roomy = new[] { "desk", "a" }.Aggregate(
            show,
            (made, device) =>
                made.WithProfile(
                    device,
                    profile =>
                        profile with
                        {
                            Limits = new() { StreamsSent = 4, StreamsReceived = 4 },
                        }
                )
        );

        Expect.None(Rule, roomy);
        Assert.Equal(2, NetworkShow.Set(Rule, roomy, "nearLimit", 2).Count);
    }

    [Fact]
    public void A_box_that_ties_its_slots_to_its_sockets_cannot_move_them()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box))
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "a/receive/5-8"))
            .With(Route(null, "desk/transmit/4"), Route("desk/aux/4", "desk/transmit/5"));

        Expect.None(Rule, show);
    }

    [Fact]
    public void Streams_to_different_boxes_are_not_joined()
    {
        var show = NetworkShow
            .Boxes("a", "b")
            .WithProfile("desk", profile => profile with { FactoryRoutes = [] })
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "b/receive/1-4"))
            .With(Route("desk/aux/1-2", "desk/transmit/1-2"), Route("desk/aux/4", "desk/transmit/5"));

        Expect.None(Rule, show);
    }

    [Fact]
    public void A_stream_without_any_signal_is_told_elsewhere() => Expect.None(Rule, Two(("aux/1-2", "transmit/1-2")));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
