using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>The runs that the document itself gives to a demand: its pins, and the outputs that a line names. They are nobody else's place.</summary>
internal static class NamedRuns
{
    /// <summary>First points of the runs, each as wide as the demand.</summary>
    public static List<PointIndex> Of(SignalGraph graph, DemandNode demand)
    {
        var runs = new List<PointIndex>();
        foreach (var run in demand.IsPinned ? demand.Allowed : [])
        {
            runs.Add(run);
        }

        foreach (var sink in demand.Line?.Sinks ?? [])
        {
            if (!sink.IsNone && graph.GroupOf(sink).Kind == PortKind.Output)
            {
                runs.Add(sink);
            }
        }

        return runs;
    }
}
