using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Promises;

/// <summary>Where lines are plugged in.</summary>
internal static class PluggedLines
{
    /// <summary>The lines that are plugged in, and where: as written, or where the patch has them.</summary>
    public static IEnumerable<(Line Line, Point At)> Of(Show show)
    {
        var resolved = Promise.Resolve(show);
        foreach (var line in show.Lines.Where(line => line.From.Source is null))
        {
            var demand = resolved.Demands.First(demand => demand.Line?.Model == line);
            var runs =
                !line.From.At.IsEmpty ? line.From.At.ToArray()
                : demand.Existing.IsNone ? []
                : [resolved.Graph.Address(demand.Existing, demand.Width)];
            foreach (
                var run in runs.Where(run =>
                    resolved.Graph.Find(run, out var first) == RoutingRules.Resolving.ConnectionState.Connected
                    && resolved.Graph.GroupOf(first).Kind == PortKind.Input
                )
            )
            {
                for (var i = 0; i < run.Width; i++)
                {
                    yield return (line, run[i]);
                }
            }
        }
    }
}
