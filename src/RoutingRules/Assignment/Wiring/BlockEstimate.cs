using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>About how many blocks places need, kept up to date place by place. Not thread safe.</summary>
/// <remarks>
/// Counters of sources, each in one pool. A pool that is a block costs one when anything is in it; a pool of freely packed sources one for each block
/// it fills or begins.
/// </remarks>
internal sealed class BlockEstimate
{
    private readonly AssignmentProblem problem;
    private readonly WiringFloor floor;
    private readonly Dictionary<Candidate, int[]> itemsOf = [];
    private readonly Dictionary<Candidate, (int Block, int Sender)[]> blocksOf = [];
    private readonly Dictionary<(int Kind, int First, int Second), int> poolIds = [];
    private readonly Dictionary<(int Pool, int Source), int> itemIds = [];
    private readonly List<Pool> pools = [];
    private readonly List<int> poolOf = [];
    private readonly List<int> usesOf = [];
    private readonly int[] senderOf;
    private readonly int[] senders;

    private const int Transmit = 0;
    private const int Receive = 1;
    private const int FreeTransmit = 2;
    private const int FreeReceive = 3;
    private const int LineReceive = 4;

    public BlockEstimate(AssignmentProblem problem)
    {
        this.problem = problem;
        floor = new WiringFloor(problem);
        senderOf = new int[problem.ReceiveBlocks.Length];
        senders = new int[problem.ReceiveBlocks.Length];
    }

    private sealed class Pool
    {
        public required bool IsTransmit { get; init; }

        public required int Width { get; init; }

        public int Sources { get; set; }
    }

    /// <summary>False when a receive block that a place needs is fed by another sender.</summary>
    public bool Agrees(Candidate candidate)
    {
        foreach (var (block, sender) in Blocks(candidate))
        {
            if (senders[block] > 0 && senderOf[block] != sender)
            {
                return false;
            }
        }

        return true;
    }

    public void Add(Candidate candidate)
    {
        foreach (var (block, sender) in Blocks(candidate))
        {
            senderOf[block] = sender;
            senders[block]++;
        }

        foreach (var item in Items(candidate))
        {
            pools[poolOf[item]].Sources += usesOf[item]++ == 0 ? 1 : 0;
        }
    }

    public void Remove(Candidate candidate)
    {
        foreach (var (block, _) in Blocks(candidate))
        {
            senders[block]--;
        }

        foreach (var item in Items(candidate))
        {
            pools[poolOf[item]].Sources -= --usesOf[item] == 0 ? 1 : 0;
        }
    }

    /// <summary>Blocks that a place adds to those of the places counted.</summary>
    public (int Transmit, int Receive) Cost(Candidate candidate)
    {
        var (transmit, receive) = (0, 0);
        var items = Items(candidate);
        foreach (var item in items)
        {
            var pool = pools[poolOf[item]];
            if (usesOf[item]++ == 0)
            {
                var isNew = pool.Sources++ % pool.Width == 0;
                transmit += isNew && pool.IsTransmit ? 1 : 0;
                receive += isNew && !pool.IsTransmit ? 1 : 0;
            }
        }

        foreach (var item in items)
        {
            pools[poolOf[item]].Sources -= --usesOf[item] == 0 ? 1 : 0;
        }

        return (transmit, receive);
    }

    private (int Block, int Sender)[] Blocks(Candidate candidate)
    {
        if (!blocksOf.TryGetValue(candidate, out var blocks))
        {
            var found = new List<(int, int)>();
            foreach (var delivery in candidate.Deliveries)
            {
                for (var position = 0; position < delivery.Width && !delivery.IsLocal; position++)
                {
                    var block = problem.FixedBlockOf(delivery.Sink + position);
                    if (block >= 0 && !found.Contains((block, delivery.Sender)))
                    {
                        found.Add((block, delivery.Sender));
                    }
                }
            }

            blocksOf.Add(candidate, blocks = [.. found]);
        }

        return blocks;
    }

    private int[] Items(Candidate candidate)
    {
        if (!itemsOf.TryGetValue(candidate, out var items))
        {
            var found = new List<int>();
            foreach (var delivery in candidate.Deliveries)
            {
                for (var position = 0; position < delivery.Width && floor.IsCounted(delivery); position++)
                {
                    AddItems(delivery with { Source = delivery.Source + position, Sink = delivery.Sink + position }, found);
                }
            }

            itemsOf.Add(candidate, items = [.. found]);
        }

        return items;
    }

    private void AddItems(Delivery delivery, List<int> found)
    {
        var block = problem.FixedBlockOf(delivery.Sink);
        if (floor.TiedBlock(delivery) is var tied and >= 0)
        {
            found.Add(Item(Transmit, tied, -1, int.MaxValue, 0));
        }
        else if (block >= 0 && floor.IsFull(block, delivery.Sender))
        {
            found.Add(Item(Transmit, -1 - block, -1, int.MaxValue, 0));
        }
        else
        {
            found.Add(Item(FreeTransmit, delivery.Sender, -1, floor.TransmitWidth(delivery.Sender), delivery.Source));
        }

        if (block >= 0)
        {
            found.Add(Item(Receive, block, -1, int.MaxValue, 0));
        }
        else if (floor.TiedBlock(delivery) is var from and >= 0)
        {
            found.Add(Item(LineReceive, from, delivery.Receiver, int.MaxValue, 0));
        }
        else
        {
            found.Add(Item(FreeReceive, delivery.Receiver, delivery.Sender, floor.ReceiveWidth(delivery.Receiver), delivery.Source));
        }
    }

    private int Item(int kind, int first, int second, int width, int source)
    {
        if (!poolIds.TryGetValue((kind, first, second), out var pool))
        {
            pool = pools.Count;
            poolIds.Add((kind, first, second), pool);
            pools.Add(new Pool { IsTransmit = kind is Transmit or FreeTransmit, Width = width });
        }

        if (!itemIds.TryGetValue((pool, source), out var item))
        {
            item = poolOf.Count;
            itemIds.Add((pool, source), item);
            poolOf.Add(pool);
            usesOf.Add(0);
        }

        return item;
    }
}
