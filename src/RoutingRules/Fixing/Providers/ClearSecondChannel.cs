using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Clears channels that carry a line which does not name them. Unsafe: a double patch may be meant.</summary>
internal sealed class ClearSecondChannel : FixProvider
{
    public override string RuleId => "RR6002";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var facts = context.Facts;
        var graph = context.Resolved.Graph;
        var named = new HashSet<PointIndex>();
        var origins = new HashSet<PointIndex>();
        foreach (var line in context.Resolved.Lines)
        {
            foreach (var sink in LineDelivery.Sinks(facts, line))
            {
                named.UnionWith(Enumerable.Range(0, line.Width).Select(position => sink.At + position));
            }

            foreach (var entry in line.Model.Id.Value == finding.IdOf("line") ? LineDelivery.Entries(facts, line) : [])
            {
                origins.UnionWith(Enumerable.Range(0, line.Width).Select(position => graph.Origin(entry + position)));
            }
        }

        var sources = new SortedDictionary<PointIndex, PointIndex>();
        foreach (var route in context.Resolved.Routes)
        {
            for (var position = 0; !route.From.IsNone && position < route.Model.To.Width; position++)
            {
                var sink = route.To + position;
                if (
                    graph.Via(sink) == HopKind.Route
                    && graph.ViaIndex(sink) == route.Index
                    && graph.GroupOf(sink).Kind == PortKind.Sink
                    && !named.Contains(sink)
                    && graph.DeviceOf(sink).Id.Value == finding.IdOf("device")
                    && graph.Origin(sink) is { IsNone: false } origin
                    && origins.Contains(origin)
                )
                {
                    sources[sink] = PointIndex.None;
                }
            }
        }

        if (sources.Count == 0)
        {
            return [];
        }

        var names = sources.Keys.Select(sink => graph.Address(sink).ToString()).ToList();
        return
        [
            Fix.Of(
                $"Set {Wording.Names(names, false)} to nothing",
                FixSafety.Unsafe,
                RouteEdits.Set(context, sources),
                "Ask whether the double patch is meant, for effects or for broadcast."
            ),
        ];
    }
}
