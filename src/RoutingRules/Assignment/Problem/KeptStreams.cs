using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>Finds the streams of the input that stay whatever is assigned, and the receivers that stay with unchanged contents.</summary>
internal static class KeptStreams
{
    public static void Mark(AssignmentProblem problem)
    {
        var mentioned = Mentioned(problem);
        foreach (var stream in problem.Show.Streams)
        {
            if (stream.From.IsNone || stream.State != ConnectionState.Connected)
            {
                continue;
            }

            var touchesMentioned = false;
            var hasReceiver = false;
            foreach (var receiver in stream.Receivers)
            {
                var device = receiver.At.IsNone ? -1 : problem.Show.Graph.DeviceOf(receiver.At).Index;
                hasReceiver |= device >= 0 && !problem.IsExcluded[device];
                touchesMentioned |= device >= 0 && mentioned[device];
            }

            if ((!hasReceiver && !(stream.Model.Keep && stream.Receivers.Count == 0)) || problem.IsExcluded[problem.Show.Graph.DeviceOf(stream.From).Index])
            {
                continue;
            }

            if (stream.Model.Keep || !touchesMentioned)
            {
                Keep(problem, stream);
            }
            else
            {
                AddBystanders(problem, stream, mentioned);
            }
        }
    }

    /// <summary>Devices that hold an allowed point or a <c>to</c> of any demand, or that one names.</summary>
    private static bool[] Mentioned(AssignmentProblem problem)
    {
        var mentioned = new bool[problem.DeviceCount];
        var graph = problem.Show.Graph;
        foreach (var demand in problem.Show.Demands)
        {
            var to = demand.Feed?.Model.To[demand.Entry];
            foreach (var id in demand.Line?.Model.From.Devices ?? to!.Devices)
            {
                Name(id);
            }

            if (to?.At is { } at)
            {
                Name(at.Device);
            }

            foreach (var run in demand.Allowed)
            {
                mentioned[graph.DeviceOf(run).Index] = true;
            }

            // A pair does not start on an even number, but what serves it there now may stay.
            foreach (var run in demand.EvenRuns)
            {
                mentioned[graph.DeviceOf(run).Index] = true;
            }

            foreach (var sink in demand.Line?.Sinks ?? [])
            {
                if (!sink.IsNone)
                {
                    mentioned[graph.DeviceOf(sink).Index] = true;
                }
            }
        }

        return mentioned;

        void Name(Id<Device> id)
        {
            if (graph.Device(id) is { } device)
            {
                mentioned[device.Index] = true;
            }
        }
    }

    private static void Keep(AssignmentProblem problem, StreamNode stream)
    {
        problem.Staying.Add(stream);
        var network = problem.Show.Network.IndexOf(stream.Model.Network);
        for (var slot = 0; slot < stream.Model.From.Width; slot++)
        {
            var block = problem.TransmitBlockOf[stream.From.Value + slot];
            if (block >= 0)
            {
                problem.TransmitBlocks[block].IsKept = true;
                problem.TransmitBlocks[block].IsHeard |= stream.Receivers.Count > 0;
                problem.TransmitBlocks[block].KeptStream = stream.Index;
                problem.TransmitBlocks[block].KeptNetwork = network;
            }
        }

        foreach (var block in ReceiveBlocks(problem, stream, null))
        {
            problem.ReceiveBlocks[block].IsKept = true;
            problem.ReceiveBlocks[block].HasWay =
                network >= 0
                && problem.Network.Joins(network, problem.Show.Graph.DeviceOf(stream.From), problem.Show.Devices[problem.ReceiveBlocks[block].Device]);
        }
    }

    private static void AddBystanders(AssignmentProblem problem, StreamNode stream, bool[] mentioned)
    {
        var block = problem.TransmitBlockOf[stream.From.Value];
        if (block < 0 || problem.TransmitBlocks[block].First != stream.From.Value || problem.TransmitBlocks[block].Width != stream.Model.From.Width)
        {
            return;
        }

        problem.TransmitBlocks[block].BystanderNetwork = problem.Show.Network.IndexOf(stream.Model.Network);
        problem.TransmitBlocks[block].Bystanders.AddRange(ReceiveBlocks(problem, stream, mentioned));
    }

    private static List<int> ReceiveBlocks(AssignmentProblem problem, StreamNode stream, bool[]? mentioned)
    {
        var blocks = new List<int>();
        foreach (var receiver in stream.Receivers)
        {
            for (var slot = 0; !receiver.At.IsNone && slot < receiver.Model.At.Width; slot++)
            {
                var block = problem.ReceiveBlockOf[receiver.At.Value + slot];
                if (
                    block >= 0
                    && !blocks.Contains(block)
                    && !(mentioned?[problem.ReceiveBlocks[block].Device] ?? false)
                    && problem.Show.Graph.Hops[receiver.At.Value + slot] == HopKind.Stream
                    && problem.Show.Graph.ViaIndex(receiver.At + slot) == stream.Index
                )
                {
                    blocks.Add(block);
                }
            }
        }

        return blocks;
    }
}
