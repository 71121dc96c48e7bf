using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts;

/// <summary>Follows signal up from a point, through either leg of a selector.</summary>
internal static class SignalPaths
{
    /// <summary>
    /// The ways by which a real source gets to a point: the point first, the source last. A point that is a source itself has none, nor has a leg of a
    /// selector with nothing plugged in. Each leg is followed once, so that loops end.
    /// </summary>
    public static List<List<PointIndex>> To(RuleContext context, PointIndex point)
    {
        var ways = new List<List<PointIndex>>();
        HashSet<PointIndex>? legs = null;
        Stack<List<PointIndex>>? pending = null;
        for (List<PointIndex>? way = [point]; way is not null; way = pending?.Count > 0 ? pending.Pop() : null)
        {
            if (context.IsLooping(way[^1]))
            {
                continue;
            }

            while (context.Upstream(way[^1]) is { IsNone: false } next)
            {
                way.Add(next);
            }

            var before = context.Before(way[^1]);
            if (before.Count == 0 && way.Count > 1 && context.Origin(way[^1]) == way[^1] && !IsOpenLeg(context, way))
            {
                ways.Add(way);
            }

            for (var i = 0; i < before.Count; i++)
            {
                if ((legs ??= []).Add(before[i]))
                {
                    (pending ??= new()).Push([.. way, before[i]]);
                }
            }
        }

        return ways;
    }

    private static bool IsOpenLeg(RuleContext context, List<PointIndex> way) =>
        context.GroupOf(way[^1]).Kind == PortKind.Input && context.Upstream(way[^2]).IsNone;
}
