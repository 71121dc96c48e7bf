using System.Numerics;
using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Which blocks places use, and the counters that their freely packed sources add to.</summary>
/// <param name="problem">The problem.</param>
/// <param name="floor">What any wiring needs.</param>
/// <param name="part">What may be chosen.</param>
/// <param name="mayShare">Whether sources may count as shares of a block.</param>
/// <param name="devices">Devices of the search.</param>
internal sealed class OrderUses(AssignmentProblem problem, WiringFloor floor, Part part, bool mayShare, LocalNumbers devices)
{
    private readonly List<OrderPool> pools = [];
    private readonly Dictionary<(int Receiver, int Sender, ObjectiveLevel Level), int> poolOf = [];
    private readonly LocalNumbers receivers = new();
    private readonly Dictionary<int, int> touched = [];

    /// <summary>True when no blocks can be shared beyond what the search counts, so that its costs are bounds as they are.</summary>
    public bool IsPlain { get; private set; } = true;

    public IReadOnlyList<OrderPool> Pools => pools;

    /// <summary>Blocks that demands that stand use, with their marks; those of lines by their complement.</summary>
    public IReadOnlyDictionary<int, int> Touched => touched;

    /// <summary>What a place uses.</summary>
    public (int[] Blocks, int[] Marks, (int Pool, int Amount)[] Pools) Use(Demand demand, Candidate candidate) => Use(demand, candidate, candidate.Deliveries);

    /// <summary>What a demand that stands uses however it stands there.</summary>
    public (int[] Blocks, int[] Marks, (int Pool, int Amount)[] Pools) UseStanding(Demand demand, Candidate candidate)
    {
        var sure = Sure(demand, candidate);
        IsPlain &= sure.Length == candidate.Deliveries.Length;
        return Use(demand, candidate, mayShare ? sure : candidate.Deliveries);
    }

    /// <summary>The deliveries that a demand makes however it stands where it does: a line at several points may take another of them.</summary>
    private Delivery[] Sure(Demand demand, Candidate standing)
    {
        var others = part.Choices[demand.Index]
            .Select(choice => demand.Candidates[choice])
            .Where(other => other.First == standing.First && other.Failed == standing.Failed)
            .ToArray();
        return Array.FindAll(standing.Deliveries, delivery => Array.TrueForAll(others, other => other.Deliveries.Contains(delivery)));
    }

    /// <summary>Blocks that deliveries use by their place alone, with their marks, and what they add to pools.</summary>
    private (int[] Blocks, int[] Marks, (int Pool, int Amount)[] Pools) Use(Demand demand, Candidate candidate, Delivery[] deliveries)
    {
        var blocks = new SortedDictionary<int, int>();
        var added = new List<(int Pool, int Amount)>();
        var seen = new HashSet<(int Source, int Receiver)>();
        foreach (var delivery in deliveries)
        {
            // Two sinks of one device share a slot.
            if (!floor.IsCounted(delivery) || (demand.Node.Line is not null && !seen.Add((delivery.Source, delivery.Receiver))))
            {
                continue;
            }

            for (var position = 0; position < delivery.Width; position++)
            {
                var isUnique = demand.Node.Line is not null || floor.IsUnique(delivery.Source + position);
                if (demand.Node.Line is not null && IsSplit(candidate, delivery))
                {
                    // It travels in a block of another device than the one it is numbered on.
                    IsPlain = false;
                }
                else if (demand.Node.Line is not null)
                {
                    UseLine(delivery with { Source = delivery.Source + position }, blocks, added);
                }
                else if (problem.FixedBlockOf(delivery.Sink + position) is var block and >= 0)
                {
                    var share = floor.IsFull(block, delivery.Sender) ? floor.ShareOf(delivery.Source + position) : 0;
                    IsPlain &= share == WiringFloor.WholeBlock;
                    blocks[block] = Math.Max(blocks.GetValueOrDefault(block), mayShare ? share : WiringFloor.WholeBlock);
                }
                else if (isUnique)
                {
                    Add(added, Pool(delivery.Receiver, delivery.Sender, ObjectiveLevel.ReceiveBlocks, floor.ReceiveWidth(delivery.Receiver), candidate.Device));
                }
            }
        }

        return ([.. blocks.Keys], [.. blocks.Values], [.. added]);
    }

    /// <summary>True when a line is delivered from another of its points than the first.</summary>
    private bool IsSplit(Candidate candidate, Delivery delivery) =>
        delivery.Source != candidate.First && problem.Show.Graph.FixedSource(new PointIndex(delivery.Source)) != new PointIndex(candidate.First);

    private void UseLine(Delivery delivery, SortedDictionary<int, int> blocks, List<(int Pool, int Amount)> added)
    {
        var receiver = receivers.Of(delivery.Receiver);
        if (floor.TiedBlock(delivery) is var block and >= 0)
        {
            blocks[block] = blocks.GetValueOrDefault(block) | (receiver < 30 ? 1 << receiver : 0);
            return;
        }

        Add(added, Pool(delivery.Receiver, delivery.Sender, ObjectiveLevel.ReceiveBlocks, floor.ReceiveWidth(delivery.Receiver), delivery.Sender));
        if (receiver == 0)
        {
            // The first receiver stands for all, so that a source counts once whoever takes it.
            Add(added, Pool(-1, delivery.Sender, ObjectiveLevel.TransmitBlocks, floor.TransmitWidth(delivery.Sender), delivery.Sender));
        }
    }

    private int Pool(int receiver, int sender, ObjectiveLevel level, int width, int device)
    {
        if (!poolOf.TryGetValue((receiver, sender, level), out var pool))
        {
            pool = pools.Count;
            poolOf.Add((receiver, sender, level), pool);
            pools.Add(new OrderPool(level, width, devices.Of(device)));
        }

        return pool;
    }

    private static void Add(List<(int Pool, int Amount)> added, int pool)
    {
        var at = added.FindIndex(entry => entry.Pool == pool);
        if (at < 0)
        {
            added.Add((pool, 1));
        }
        else
        {
            added[at] = (pool, added[at].Amount + 1);
        }
    }

    /// <summary>Notes a use by a demand that stands, and adds what it costs.</summary>
    public void Touch(int[] cost, int block, int mark, bool isLine)
    {
        var key = isLine ? ~block : block;
        var isKnown = touched.TryGetValue(key, out var known);
        touched[key] = Join(isLine, known, mark);
        AddBlock(cost, isLine, isKnown, known, mark);
    }

    /// <summary>Joins what is known of a block with one more use of it: receivers of lines, or the greatest share that a source asks for.</summary>
    public static int Join(bool isLine, int known, int mark) => isLine ? known | mark : Math.Max(known, mark);

    /// <summary>Adds what one more use of a block costs; transmit blocks in parts of <see cref="WiringFloor.WholeBlock"/>.</summary>
    public static void AddBlock(int[] cost, bool isLine, bool isKnown, int known, int mark)
    {
        if (isLine)
        {
            cost[ObjectiveNumbers.TransmitBlocks] += isKnown ? 0 : WiringFloor.WholeBlock;
            cost[ObjectiveNumbers.ReceiveBlocks] += BitOperations.PopCount((uint)(mark & ~known));
        }
        else
        {
            cost[ObjectiveNumbers.ReceiveBlocks] += isKnown ? 0 : 1;
            cost[ObjectiveNumbers.TransmitBlocks] += Math.Max(0, mark - known);
        }
    }
}
