using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tracing;
using static RoutingRules.Tests.Tracing.TracerShows;

namespace RoutingRules.Tests.Tracing;

/// <summary>Where the way back of a signal ends.</summary>
public sealed class TraceStartTests
{
    [Theory]
    [InlineData("box-a/out/1", TraceStart.EmptySlot, "No stream arrives at box-a/receive/1")]
    [InlineData("box-a/in/1", TraceStart.OpenInput, "box-a/in/1 is an input without a cable")]
    [InlineData("amp/out/1", TraceStart.OpenInput, "amp/in/1 is an input without a cable")]
    [InlineData("desk/transmit/8", TraceStart.NothingRouted, "Nothing is routed to desk/transmit/8")]
    [InlineData("desk/channel/1", TraceStart.EmptySlot, "No stream arrives at desk/receive/1")]
    [InlineData("desk/transmit/2", TraceStart.Cleared, "Route 1 of the patch clears desk/transmit/2")]
    [InlineData("box-b/out/2", TraceStart.Cleared, "Route 1 of the patch clears desk/transmit/2")]
    [InlineData("desk/net/1", TraceStart.Jack, "desk/net/1 is a network jack")]
    public void Where_the_way_back_ends_is_named(string point, TraceStart start, string reason)
    {
        var trace = Trace(Club().With(SmallShow.Route(null, "desk/transmit/2")), point);

        Assert.Equal(start, trace.Start);
        Assert.StartsWith(reason, trace.StartReason, StringComparison.Ordinal);
        Assert.Equal(start == TraceStart.OpenInput, trace.HasSource);
    }

    [Fact]
    public void The_output_of_a_selector_is_a_source()
    {
        var profile = SmallProfiles.Amplifier with
        {
            Id = new("test/selector"),
            Through = [SmallProfiles.Amplifier.Through[0] with { Kind = ThroughKind.Select }],
        };
        var trace = Trace(SmallShow.Of(("sel", profile)), "sel/out/1");

        Assert.Equal(TraceStart.Selector, trace.Start);
        Assert.True(trace.HasSource);
    }

    [Fact]
    public void A_ring_ends_where_it_closes()
    {
        var show = SmallShow.Of(("a", SmallProfiles.Amplifier), ("b", SmallProfiles.Amplifier), ("c", SmallProfiles.Amplifier));
        show = show with
        {
            Rig = show.Rig with { Cables = [SmallShow.Cable("a/out/1", "b/in/1"), SmallShow.Cable("b/out/1", "a/in/1"), SmallShow.Cable("b/out/2", "c/in/2")] },
        };
        var trace = Trace(show, "a/in/1");

        Assert.Equal(TraceStart.Loop, trace.Start);
        Assert.False(trace.HasSource);
        Assert.Equal(["a/in/1 Through a/out/1", "a/out/1 Cable b/in/1", "b/in/1 Through b/out/1", "b/out/1 Cable a/in/1"], Steps(trace.Upstream));
        Assert.Equal("a/in/1", trace.StartAt.At.ToString());
        Assert.Equal(
            ["a/in/1 Through a/out/1", "a/out/1 Cable b/in/1", "b/in/1 Through b/out/1", "b/out/1 Cable a/in/1"],
            Steps(trace.Downstream.Select(branch => branch.Hop))
        );
        Assert.True(trace.Downstream[3].IsEnd);
    }

    [Fact]
    public void What_hangs_on_a_ring_is_silent_too()
    {
        var show = SmallShow
            .Of(("desk", SmallProfiles.FreeBox), ("amp", SmallProfiles.Amplifier))
            .With(SmallShow.Route("desk/in/1", "desk/out/1"), SmallShow.Route("desk/in/1", "desk/out/2"));
        show = show with { Rig = show.Rig with { Cables = [SmallShow.Cable("desk/out/1", "amp/in/1"), SmallShow.Cable("amp/out/1", "desk/in/1")] } };
        var trace = Trace(show, "desk/out/2");

        Assert.Equal(TraceStart.Loop, trace.Start);

        // Back from the output: its input, the amplifier, and so on to the input again, where the ring closes.
        Assert.Equal(
            [
                "desk/in/1 Route desk/out/1",
                "desk/out/1 Cable amp/in/1",
                "amp/in/1 Through amp/out/1",
                "amp/out/1 Cable desk/in/1",
                "desk/in/1 Route desk/out/2",
            ],
            Steps(trace.Upstream)
        );
    }

    [Fact]
    public void A_point_that_is_none_is_a_wrong_call()
    {
        var show = TestEngine.Resolve(Club());

        Assert.Throws<ArgumentOutOfRangeException>(() => RoutingEngine.Trace(show, PointIndex.None));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoutingEngine.Trace(show, new PointIndex(show.Graph.PointCount)));
    }
}
