using RoutingRules.Answers.Comparing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Answers.Changeovers;

/// <summary>What the outputs and console channels of a rig carry at one moment.</summary>
internal sealed class StateView
{
    private StateView(Show show, ResolvedShow resolved, Dictionary<Point, Point> carried, HashSet<Point> leaves)
    {
        Show = show;
        Resolved = resolved;
        Carried = carried;
        Leaves = leaves;
    }

    public Show Show { get; }

    public ResolvedShow Resolved { get; }

    /// <summary>The real source of every output and sink that has one.</summary>
    public Dictionary<Point, Point> Carried { get; }

    /// <summary>The outputs that feed nothing more in the document: what is behind them is heard.</summary>
    public HashSet<Point> Leaves { get; }

    public static StateView Of(RoutingEngine engine, Show show)
    {
        var resolved = engine.Resolve(show);
        var carried = new Dictionary<Point, Point>();
        var leaves = new HashSet<Point>();
        foreach (var sink in ShowSide.SinksOf(resolved))
        {
            var at = resolved.Graph.Address(sink);
            if (resolved.Graph.Origin(sink) is { IsNone: false } source)
            {
                carried.Add(at, resolved.Graph.Address(source));
            }

            if (resolved.Graph.GroupOf(sink).Kind == PortKind.Output && resolved.Graph.Fed(sink).IsEmpty)
            {
                leaves.Add(at);
            }
        }

        return new StateView(show, resolved, carried, leaves);
    }

    /// <summary>The outputs and sinks that carry something else in the other state.</summary>
    public IEnumerable<Point> Differences(StateView other) =>
        Carried.Where(pair => !other.Carried.TryGetValue(pair.Key, out var source) || source != pair.Value).Select(pair => pair.Key)
            .Concat(other.Carried.Keys.Where(at => !Carried.ContainsKey(at)));
}
