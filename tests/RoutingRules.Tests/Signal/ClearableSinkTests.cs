using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Signal;

/// <summary>A fixed, clearable sink takes its own source or nothing; of several routes the first in the document counts.</summary>
public sealed class ClearableSinkTests
{
    private static readonly Route Own = SmallShow.Route("box/receive/1", "box/out/1");
    private static readonly Route Null = SmallShow.Route(null, "box/out/1");
    private static readonly Route Other = SmallShow.Route("box/receive/2", "box/out/1");

    [Fact]
    public void Without_a_route_the_sink_takes_its_own_source() => Assert.Equal("desk/aux/1", Carried());

    [Fact]
    public void A_null_route_clears_it() => Assert.Null(Carried(Null));

    [Fact]
    public void Its_own_source_first_wins_over_a_later_null_which_is_a_conflict()
    {
        Assert.Equal("desk/aux/1", Carried(Own, Null));
        Assert.Equal(1, Assert.Single(Show(Own, Null).Conflicts).OtherIndex);
    }

    [Fact]
    public void A_null_first_wins_over_its_own_source()
    {
        Assert.Null(Carried(Null, Own));
        Assert.Single(Show(Null, Own).Conflicts);
    }

    [Fact]
    public void Another_source_has_no_effect()
    {
        Assert.Equal("desk/aux/1", Carried(Other));
        Assert.Single(Show(Other).IdleRoutes);
    }

    private static ResolvedShow Show(params Route[] routes) =>
        Promise.Resolve(
            SmallShow
                .Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.ClearableBox))
                .With(SmallShow.Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
                .With(routes)
        );

    private static string? Carried(params Route[] routes)
    {
        var graph = Show(routes).Graph;
        var origin = graph.Origin(graph.Find(new Point(new("box"), new("out"), 1)));
        return origin.IsNone ? null : graph.Address(origin).ToString();
    }
}
