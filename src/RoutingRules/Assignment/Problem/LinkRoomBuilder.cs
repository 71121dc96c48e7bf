namespace RoutingRules.Assignment.Problem;

/// <summary>Finds the directions of links that some patch could overfill.</summary>
/// <remarks>
/// A direction counts as safe when it holds all that could pass it: of each sender no more streams than it can send and than demands, and receivers
/// that nobody mentions, could ask for over it, and of all senders no more than there are blocks behind it to receive them.
/// </remarks>
internal sealed class LinkRoomBuilder
{
    private readonly AssignmentProblem problem;
    private readonly LinkLoads loads;
    private readonly Dictionary<(int Sender, int Direction), int> asked = [];
    private readonly Dictionary<int, SortedSet<int>> receiversOver = [];

    private LinkRoomBuilder(AssignmentProblem problem)
    {
        this.problem = problem;
        loads = new LinkLoads(problem.Show, problem.Network, problem.Options.LinkPercent, problem.Staying, problem.IsExcluded);
    }

    public static LinkRoom Build(AssignmentProblem problem) =>
        problem.Show.Links.Any(link => link.Model.SpeedMbps is not null) ? new LinkRoomBuilder(problem).Build() : LinkRoom.None;

    private LinkRoom Build()
    {
        if (IsSafe())
        {
            return LinkRoom.None;
        }

        Ask();
        var directions = new List<int>();
        for (var direction = 0; direction < loads.Staying.Length; direction++)
        {
            if (receiversOver.ContainsKey(direction) && loads.Most(direction) < long.MaxValue && Worst(direction) > loads.Most(direction))
            {
                directions.Add(direction);
            }
        }

        return directions.Count == 0 ? LinkRoom.None : new LinkRoom(problem, loads, [.. directions], Units());
    }

    /// <summary>True when everything that can be sent at all fits on the slowest link together.</summary>
    private bool IsSafe()
    {
        var least = long.MaxValue;
        long staying = 0;
        for (var direction = 0; direction < loads.Staying.Length; direction++)
        {
            least = Math.Min(least, loads.Most(direction));
            staying = Math.Max(staying, loads.Staying[direction]);
        }

        return staying + problem.TransmitBlocks.Sum(GreatestRate) <= least;
    }

    private long GreatestRate(TransmitBlock block)
    {
        long most = 0;
        for (var network = 0; network < problem.Show.Document.Rig.Networks.Count && !block.IsCarrier; network++)
        {
            most = Math.Max(most, loads.Of(network, block));
        }

        return block.IsKept ? Math.Max(most, loads.OfStaying(block)) : most;
    }

    /// <summary>Counts for each sender and direction how many streams could be asked for over it.</summary>
    private void Ask()
    {
        var seen = new HashSet<(int Sender, int Receiver)>();
        var over = new HashSet<(int Sender, int Direction)>();
        foreach (var demand in problem.Demands)
        {
            seen.Clear();
            over.Clear();
            foreach (var candidate in demand.Candidates)
            {
                foreach (var delivery in candidate.Deliveries)
                {
                    if (!delivery.IsLocal && seen.Add((delivery.Sender, delivery.Receiver)))
                    {
                        Pass(delivery.Sender, delivery.Receiver, over);
                    }
                }
            }

            foreach (var pair in over)
            {
                asked[pair] = asked.GetValueOrDefault(pair) + demand.Weight;
            }
        }

        foreach (var block in problem.TransmitBlocks)
        {
            over.Clear();
            foreach (var other in block.Bystanders)
            {
                Pass(block.Device, problem.ReceiveBlocks[other].Device, over);
            }

            foreach (var pair in over)
            {
                asked[pair] = asked.GetValueOrDefault(pair) + 1;
            }
        }
    }

    private void Pass(int sender, int receiver, HashSet<(int Sender, int Direction)> over)
    {
        if (problem.NetworkFrom(sender, receiver) is not (>= 0 and var network))
        {
            return;
        }

        foreach (var direction in problem.Network.Directions(network, problem.Show.Devices[sender], problem.Show.Devices[receiver]))
        {
            over.Add((sender, direction));
            if (!receiversOver.TryGetValue(direction, out var receivers))
            {
                receiversOver.Add(direction, receivers = []);
            }

            receivers.Add(receiver);
        }
    }

    private long Worst(int direction)
    {
        long sent = 0;
        long fastest = 0;
        for (var sender = 0; sender < problem.DeviceCount; sender++)
        {
            if (!asked.TryGetValue((sender, direction), out var count))
            {
                continue;
            }

            var rates = problem.TransmitBlocks.Where(block => block.Device == sender && !block.IsCarrier).Select(GreatestRate).OrderDescending().ToList();
            fastest = Math.Max(fastest, rates.FirstOrDefault());
            sent += rates.Take(Math.Min(count, problem.SentLimit[sender])).Sum();
        }

        var blocks = problem.ReceiveBlocks.LongCount(block => !block.IsCarrier && receiversOver[direction].Contains(block.Device));
        return loads.Staying[direction] + Math.Min(sent, blocks * fastest);
    }

    /// <summary>Blocks that one stream sends and stays are one unit, named after the first of them.</summary>
    private int[] Units()
    {
        var first = new Dictionary<int, int>();
        return Array.ConvertAll(
            problem.TransmitBlocks,
            block =>
            {
                if (!block.IsKept || block.KeptStream < 0)
                {
                    return block.Id;
                }

                first.TryAdd(block.KeptStream, block.Id);
                return first[block.KeptStream];
            }
        );
    }
}
