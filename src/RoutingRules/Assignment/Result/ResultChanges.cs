using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>What fell silent between the input of an assignment and its result.</summary>
internal sealed class ResultChanges(ResolvedShow before, SignalGraph after)
{
    private readonly SignalGraph graph = before.Graph;

    /// <summary>Receivers that took a stream and take none now, run by run.</summary>
    public ValueList<RemovedReceiver> RemovedReceivers()
    {
        var removed = new List<RemovedReceiver>();
        foreach (var stream in before.Streams)
        {
            foreach (var receiver in stream.Receivers)
            {
                var width = receiver.At.IsNone ? 0 : receiver.Model.At.Width;
                for (var (from, until) = (0, 0); from < width; from = until + 1)
                {
                    until = from;
                    while (until < width && HasLeft(stream, receiver.At + until))
                    {
                        until++;
                    }

                    if (until > from)
                    {
                        removed.Add(new RemovedReceiver { Stream = stream.Model.Id, At = graph.Address(receiver.At + from, until - from) });
                    }
                }
            }
        }

        return removed.ToValueList();
    }

    /// <summary>Outputs that sounded and are silent now, in point order.</summary>
    public ValueList<Point> Silenced()
    {
        var silenced = new List<Point>();
        foreach (var device in before.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind == PortKind.Output && i < group.Count; i++)
                {
                    var point = device.FirstPoint + group.Offset + i;
                    if (graph.Origins[point] >= 0 && after.Origins[point] < 0)
                    {
                        silenced.Add(graph.Address(new PointIndex(point)));
                    }
                }
            }
        }

        return silenced.ToValueList();
    }

    /// <summary>Those of some channels that took something and take nothing now.</summary>
    public ValueList<Point> Cleared(IEnumerable<PointIndex> channels) =>
        channels.Distinct().Where(point => !graph.Upstream(point).IsNone && after.Upstream(point).IsNone).Select(point => graph.Address(point)).ToValueList();

    private bool HasLeft(StreamNode stream, PointIndex slot) =>
        graph.Via(slot) == HopKind.Stream && graph.ViaIndex(slot) == stream.Index && after.Via(slot) != HopKind.Stream;
}
