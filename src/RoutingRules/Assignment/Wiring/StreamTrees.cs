using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The links that the streams of a wiring use: from each sender to all its receivers.</summary>
internal sealed class StreamTrees(AssignmentProblem problem, WiringPlan wiring)
{
    private readonly Dictionary<int, HashSet<int>> links = [];

    /// <summary>Links of the streams that bring a candidate's deliveries.</summary>
    public HashSet<int> LinksOf(Candidate candidate)
    {
        var found = new HashSet<int>();
        foreach (var delivery in candidate.Deliveries)
        {
            foreach (var block in problem.ReceiveBlocks)
            {
                if (block.Device == delivery.Receiver && Start(block) >= 0 && Brings(block, delivery))
                {
                    found.UnionWith(Tree(problem.TransmitBlockOf[Start(block)]));
                }
            }
        }

        return found;
    }

    /// <summary>The first slot a receive block takes, from streams that stay as from others.</summary>
    private int Start(ReceiveBlock block) => block.IsKept ? block.InputStart : wiring.ReceiveStart[block.Id];

    private bool Brings(ReceiveBlock block, Delivery delivery)
    {
        var fed = problem.ReceiveSlotOf(delivery.Sink);
        return Holds(fed) || Array.Exists(wiring.FreeRoutes, route => route.Sink == delivery.Sink && Holds(route.Slot));

        bool Holds(int slot) => slot >= block.First && slot < block.First + block.Width;
    }

    private HashSet<int> Tree(int transmitBlock)
    {
        if (links.TryGetValue(transmitBlock, out var known))
        {
            return known;
        }

        var tree = new HashSet<int>();
        var sender = problem.TransmitBlocks[transmitBlock].Device;
        foreach (var block in problem.ReceiveBlocks)
        {
            var start = Start(block);
            if (start >= 0 && problem.TransmitBlockOf[start] == transmitBlock && problem.NetworkFrom(sender, block.Device) is >= 0 and var network)
            {
                tree.UnionWith(problem.Network.Path(network, problem.Show.Devices[sender], problem.Show.Devices[block.Device]) ?? []);
            }
        }

        AddStaying(transmitBlock, tree);
        links.Add(transmitBlock, tree);
        return tree;
    }

    /// <summary>A stream that stays goes on to receivers that are no whole blocks too.</summary>
    private void AddStaying(int transmitBlock, HashSet<int> tree)
    {
        if (problem.TransmitBlocks[transmitBlock] is not { KeptStream: >= 0 and var index, KeptNetwork: >= 0 and var network } block)
        {
            return;
        }

        foreach (var receiver in problem.Show.Streams[index].Receivers)
        {
            if (!receiver.At.IsNone && problem.Show.Graph.DeviceOf(receiver.At) is var device && !problem.IsExcluded[device.Index])
            {
                tree.UnionWith(problem.Network.Path(network, problem.Show.Devices[block.Device], device) ?? []);
            }
        }
    }
}
