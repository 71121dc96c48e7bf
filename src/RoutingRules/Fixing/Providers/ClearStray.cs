using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Sets outputs that carry what nobody wants there to nothing, as near to the output as the devices allow.</summary>
internal sealed class ClearStray : FixProvider
{
    public override string RuleId => "RR2009";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (first, width) = context.RunOf(finding, "output");
        var sources = new SortedDictionary<PointIndex, PointIndex>();
        for (var position = 0; position < width; position++)
        {
            if (Clearable(context.Resolved.Graph, first + position) is not { IsNone: false } point)
            {
                return [];
            }

            sources[point] = PointIndex.None;
        }

        return width == 0
            ? []
            :
            [
                Fix.Of(
                    $"Set {finding.IdOf("output")} to nothing",
                    FixSafety.Unsafe,
                    RouteEdits.Set(context, sources),
                    "Ask whether somebody listens there before it falls silent."
                ),
            ];
    }

    private static PointIndex Clearable(SignalGraph graph, PointIndex output)
    {
        foreach (var point in graph.Upward(output))
        {
            switch (graph.Via(point))
            {
                case HopKind.Fixed when graph.IsClearable(point):
                case HopKind.Route or HopKind.Factory when graph.FixedSource(point) is null:
                    return point;
                case HopKind.Fixed or HopKind.Stream or HopKind.Cable or HopKind.Carrier:
                    break;
                default:
                    return PointIndex.None;
            }
        }

        return PointIndex.None;
    }
}
