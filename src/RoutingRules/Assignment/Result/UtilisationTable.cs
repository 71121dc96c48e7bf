using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Counts how full each device is.</summary>
internal static class UtilisationTable
{
    /// <param name="problem">The problem.</param>
    /// <param name="choices">The choice of each demand.</param>
    /// <param name="result">The completed show.</param>
    public static ValueList<DeviceUse> Of(AssignmentProblem problem, int[] choices, ResolvedShow result)
    {
        var isPlaced = Placed(problem, choices);
        var (sent, received) = Streams(result);
        var table = new DeviceUse[result.Devices.Count];
        foreach (var device in result.Devices)
        {
            var outputs = Points(problem, device, PortKind.Output, isPlaced);
            var inputs = Points(problem, device, PortKind.Input, isPlaced);
            var receive = ReceiveBlocks(result.Graph, device);
            var transmitBlocks = device.Groups.Where(group => group.Kind == PortKind.Transmit && !group.IsCarrier).Sum(group => group.BlockCount);
            table[device.Index] = new DeviceUse
            {
                Device = device.Id,
                OutputsUsed = outputs.Used,
                OutputsUsable = outputs.Usable,
                InputsUsed = inputs.Used,
                InputsUsable = inputs.Usable,
                TransmitBlocksUsed = sent[device.Index],
                TransmitBlockLimit = Math.Min(transmitBlocks, device.Profile.Limits?.StreamsSent ?? int.MaxValue),
                ReceiveBlocksUsed = receive.Used,
                ReceiveBlockLimit = receive.Count,
                StreamsReceived = received[device.Index],
                StreamsReceivedLimit = device.Profile.Limits?.StreamsReceived,
            };
        }

        return ValueList.Create<DeviceUse>(table);
    }

    private static bool[] Placed(AssignmentProblem problem, int[] choices)
    {
        var placed = new bool[problem.Show.Graph.PointCount];
        foreach (var demand in problem.Demands)
        {
            if (choices[demand.Index] < 0)
            {
                continue;
            }

            placed.AsSpan(demand.Candidates[choices[demand.Index]].First, demand.Node.Width).Fill(true);
            foreach (var split in demand.Node.Line is { Model.From.At.IsEmpty: false } ? demand.Node.Allowed : [])
            {
                placed.AsSpan(split.Value, demand.Node.Width).Fill(true);
            }
        }

        return placed;
    }

    private static (int Used, int Usable) Points(AssignmentProblem problem, DeviceNode device, PortKind kind, bool[] isPlaced)
    {
        var (used, usable) = (0, 0);
        foreach (var group in device.Groups)
        {
            for (var i = 0; group.Kind == kind && i < group.Count; i++)
            {
                var point = device.FirstPoint + group.Offset + i;
                used += isPlaced[point] ? 1 : 0;
                usable += problem.IsBarred[point] ? 0 : 1;
            }
        }

        return (used, usable);
    }

    private static (int Used, int Count) ReceiveBlocks(SignalGraph graph, DeviceNode device)
    {
        var (used, count) = (0, 0);
        foreach (var group in device.Groups)
        {
            if (group.Kind != PortKind.Receive || group.IsCarrier)
            {
                continue;
            }

            count += group.BlockCount;
            for (var block = 0; block < group.BlockCount; block++)
            {
                var isFed = false;
                foreach (var hop in graph.Hops.Slice(device.FirstPoint + group.Offset + (block * group.BlockSize), group.BlockSize))
                {
                    isFed |= hop == HopKind.Stream;
                }

                used += isFed ? 1 : 0;
            }
        }

        return (used, count);
    }

    /// <summary>For each device how many transmit blocks it sends and how many streams it receives.</summary>
    private static (int[] Sent, int[] Received) Streams(ResolvedShow show)
    {
        var sent = new int[show.Devices.Count];
        var received = new int[show.Devices.Count];
        foreach (var stream in show.Streams)
        {
            if (stream.From.IsNone || stream.State != ConnectionState.Connected)
            {
                continue;
            }

            var receivers = stream
                .Receivers.Where(receiver => !receiver.At.IsNone)
                .Select(receiver => show.Graph.DeviceOf(receiver.At).Index)
                .Distinct()
                .ToList();
            sent[show.Graph.DeviceOf(stream.From).Index] += receivers.Count > 0 ? 1 : 0;
            receivers.ForEach(device => received[device]++);
        }

        return (sent, received);
    }
}
