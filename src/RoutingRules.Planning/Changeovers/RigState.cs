using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Changeovers;

/// <summary>What the outputs and console channels of a rig carry at one moment.</summary>
internal sealed class RigState
{
    private RigState(Show show, Dictionary<Point, Point> carried, HashSet<Point> leaves)
    {
        Show = show;
        Carried = carried;
        Leaves = leaves;
    }

    public Show Show { get; }

    /// <summary>The real source of every output, sink, cabled input, and receive slot where signal ends, that has one.</summary>
    public Dictionary<Point, Point> Carried { get; }

    /// <summary>
    /// The outputs and cabled inputs that feed nothing more in the document, and sinks and receive slots where somebody hears it: what is behind them is heard.
    /// </summary>
    public HashSet<Point> Leaves { get; }

    public static RigState Of(Checker checker, Show show)
    {
        var resolved = checker.Resolve(show);
        var carried = new Dictionary<Point, Point>();
        var leaves = new HashSet<Point>();
        foreach (var device in resolved.Devices.Where(device => resolved.Graph.Device(device.Id) == device))
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind is PortKind.Output or PortKind.Sink or PortKind.Input or PortKind.Receive && i < group.Count; i++)
                {
                    Add(resolved, device.First(group) + i, group.Kind);
                }
            }
        }

        return new RigState(show, carried, leaves);

        void Add(ResolvedShow resolved, PointIndex at, PortKind kind)
        {
            var isEnd = ShowSide.IsEnd(resolved, at);
            if ((kind == PortKind.Input && resolved.Graph.Upstream(at).IsNone) || (kind == PortKind.Receive && !isEnd))
            {
                return;
            }

            if (resolved.Graph.Origin(at) is { IsNone: false } source)
            {
                carried.Add(resolved.Graph.Address(at), resolved.Graph.Address(source));
            }

            if ((kind != PortKind.Sink || isEnd) && resolved.Graph.Fed(at).IsEmpty)
            {
                leaves.Add(resolved.Graph.Address(at));
            }
        }
    }

    /// <summary>The points that carry something else in the other state.</summary>
    public IEnumerable<Point> Differences(RigState other) =>
        Carried
            .Where(pair => !other.Carried.TryGetValue(pair.Key, out var source) || source != pair.Value)
            .Select(pair => pair.Key)
            .Concat(other.Carried.Keys.Where(at => !Carried.ContainsKey(at)));
}
