using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Resolving;
using RoutingRules.Tests.Checking.Rules;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Signal.EndShows;

namespace RoutingRules.Tests.Signal;

/// <summary>Ends of signal behind rings.</summary>
public sealed class EndRingTests
{
    private static readonly InEarLimiterMissing Rule = new();

    /// <summary>Two selectors in a ring, one of whose outputs goes to a rack, and a ring of two processors before it.</summary>
    [Fact]
    public void Rings_before_the_ears_come_to_an_end()
    {
        var show = Show(
            [("one", Selector), ("two", Selector), ("rack", EarRig.Rack)],
            "one/in-a/1",
            Cable("box/out/1", "one/in-a/1"),
            Cable("one/out/1", "two/in-a/1"),
            Cable("two/out/1", "one/in-b/1"),
            Cable("one/out/1", "rack/in/1")
        );
        ExpectEars(show, "rack/in/1");
        Expect.None(new InEarCarriesOther(), show);

        var ring = Show([("p", HeadphoneAmplifier), ("q", HeadphoneAmplifier)], "box/out/1", Cable("p/out/1", "q/in/1"), Cable("q/out/1", "p/in/1"));
        Expect.None(Rule, ring);
        Expect.None(new InEarCarriesOther(), ring);
    }

    [Fact]
    public void What_leads_to_an_end_is_what_has_the_end_behind_it()
    {
        var resolved = Promise.Resolve(
            Show([("select", Selector), ("rack", EarRig.Rack)], "box/out/1", Cable("box/out/1-2", "select/in-b/1-2"), Cable("select/out/1-2", "rack/in/2-3"))
        );
        var names = Enumerable
            .Range(0, resolved.Graph.PointCount)
            .Select(index => new PointIndex(index))
            .Where(resolved.Ears.Contains)
            .Select(point => resolved.Graph.Address(point).ToString())
            .ToArray();

        Assert.Equal(
            [
                "desk/aux/1",
                "desk/aux/2",
                "desk/transmit/1",
                "desk/transmit/2",
                "box/out/1",
                "box/out/2",
                "box/receive/1",
                "box/receive/2",
                "select/in-a/1",
                "select/in-a/2",
                "select/in-b/1",
                "select/in-b/2",
                "select/out/1",
                "select/out/2",
                "rack/in/1",
                "rack/in/2",
                "rack/in/3",
                "rack/in/4",
            ],
            names
        );
        Assert.Equal("rack/in/3", resolved.Graph.Address(Assert.Single(resolved.Ears.Behind(resolved.Graph.Find(At("desk/aux/2")[0])))).ToString());
    }
}
