using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Compares what outputs and channels carry.</summary>
internal static class SinkMoves
{
    public static ValueList<SinkMove> Between(ResolvedShow before, ResolvedShow after)
    {
        var moves = new List<SinkMove>();
        foreach (var device in before.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind is PortKind.Output or PortKind.Sink && i < group.Count; i++)
                {
                    var at = before.Graph.Address(device.First(group) + i);
                    var old = Source(before.Graph, device.First(group) + i);
                    var now = Source(after.Graph, after.Graph.Find(at));
                    if (old != now)
                    {
                        moves.Add(new SinkMove(at, old, now));
                    }
                }
            }
        }

        return moves.ToValueList();
    }

    private static Point? Source(SignalGraph graph, PointIndex sink) =>
        sink.IsNone || graph.Origin(sink) is not { IsNone: false } source ? null : graph.Address(source);
}
