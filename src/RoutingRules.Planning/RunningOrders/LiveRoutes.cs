using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Takes out routes that are left over from acts before and do nothing any more.</summary>
internal static class LiveRoutes
{
    /// <summary>The routes that still carry something, or keep something silent; neighbours as one.</summary>
    public static ValueList<Route> Of(ResolvedShow show)
    {
        var live = new List<(Point Sink, Point? Source)>();
        foreach (var (sink, source) in RouteMap.Of(show.Document).OrderBy(pair => show.Graph.Find(pair.Key)))
        {
            var index = show.Graph.Find(sink);
            if (index.IsNone || source is null || !IsIdle(show, index))
            {
                live.Add((sink, source));
            }
            else if (IsHeard(show, index) && show.Graph.FactorySource(index) is { IsNone: false } own && !show.Graph.Origin(own).IsNone)
            {
                // Without the route the device would take its own source.
                live.Add((sink, null));
            }
        }

        return show.Document.Patch.Routes.Where(route => !RouteMap.IsWhole(route)).Concat(RouteMap.Chains(live).Select(RouteMap.Join)).ToValueList();
    }

    private static bool IsIdle(ResolvedShow show, PointIndex sink) => show.Graph.Origin(sink).IsNone || !IsHeard(show, sink);

    /// <summary>False for a transmit slot that nothing takes along.</summary>
    private static bool IsHeard(ResolvedShow show, PointIndex sink)
    {
        if (show.Graph.GroupOf(sink).Kind != PortKind.Transmit)
        {
            return true;
        }

        return !show.Graph.Fed(sink).IsEmpty
            || show.Streams.Any(stream =>
                stream.Model.From is var from
                && show.Graph.Find(from, out var first) == ConnectionState.Connected
                && sink.Value >= first.Value
                && sink.Value < first.Value + from.Width
            );
    }
}
