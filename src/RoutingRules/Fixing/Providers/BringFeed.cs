using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Routes a feed inside its own device to where a pinned destination takes its signal from, where no route uses that point yet.</summary>
internal sealed class BringFeed(string ruleId) : FixProvider
{
    public override string RuleId => ruleId;

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var graph = context.Resolved.Graph;
        var sources = new SortedDictionary<PointIndex, PointIndex>();
        var names = finding.Entities.Where(entity => entity.Role == "feed").Select(entity => entity.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var demand in context.Resolved.Demands)
        {
            if (demand.Feed is not { } feed || !names.Contains(feed.Model.Id.Value) || !demand.Existing.IsNone || !demand.IsPinned || feed.Source.IsNone)
            {
                continue;
            }

            for (var position = 0; position < demand.Width; position++)
            {
                if (
                    demand.Allowed.Count != 1
                    || Chooser(graph, feed.Source + position, demand.Allowed[0] + position) is not { IsNone: false } point
                    || !sources.TryAdd(point, feed.Source + position)
                )
                {
                    return [];
                }
            }
        }

        if (sources.Count == 0)
        {
            return [];
        }

        var routes = sources.Select(pair => $"{graph.Address(pair.Value)} to {graph.Address(pair.Key)}").ToList();
        return
        [
            Fix.Of(
                $"Route {Wording.Names(routes, false)}",
                FixSafety.Unsafe,
                RouteEdits.Set(context, sources),
                "Turn the outputs down first, and bring them up one by one."
            ),
        ];
    }

    private static PointIndex Chooser(SignalGraph graph, PointIndex source, PointIndex sink)
    {
        var point = RouteEdits.Chooser(graph, sink);
        return !point.IsNone && graph.Via(point) != HopKind.Route && RouteEdits.IsFree(graph, source, point) ? point : PointIndex.None;
    }
}
