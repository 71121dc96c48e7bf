namespace RoutingRules.Assignment;

/// <summary>The links that the streams of a wiring use: from each sender to all its receivers.</summary>
internal sealed class StreamTrees(AssignmentProblem problem, Wiring wiring)
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
                if (block.Device == delivery.Receiver && wiring.ReceiveStart[block.Id] >= 0 && Brings(block, delivery))
                {
                    found.UnionWith(Tree(problem.TransmitBlockOf[wiring.ReceiveStart[block.Id]]));
                }
            }
        }

        return found;
    }

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
            var start = wiring.ReceiveStart[block.Id];
            if (start >= 0 && problem.TransmitBlockOf[start] == transmitBlock && problem.NetworkFrom(sender, block.Device) is >= 0 and var network)
            {
                tree.UnionWith(problem.Network.Path(network, problem.Show.Devices[sender], problem.Show.Devices[block.Device]) ?? []);
            }
        }

        links.Add(transmitBlock, tree);
        return tree;
    }
}
