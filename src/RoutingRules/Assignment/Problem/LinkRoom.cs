namespace RoutingRules.Assignment.Problem;

/// <summary>The directions of links that the streams of a patch could overfill, and what is left of each beside the streams that stay.</summary>
/// <remarks>
/// Directions are given by their position here. A stream counts once on each direction of its tree, at its full rate. Blocks that one stream of the
/// input sends together are one unit; every other block is a unit by itself.
/// </remarks>
internal sealed class LinkRoom
{
    /// <summary>No link can be overfilled.</summary>
    public static LinkRoom None { get; } = new();

    private readonly AssignmentProblem? problem;
    private readonly int[] positionOf = [];
    private readonly int[]?[] crossed = [];
    private readonly int[] unitOf = [];
    private readonly long[] rates = [];
    private readonly bool[] isCrossedByStaying = [];

    private LinkRoom()
    {
        Directions = [];
        Most = [];
        Staying = [];
    }

    public LinkRoom(AssignmentProblem problem, LinkLoads loads, int[] directions, int[] unitOf)
    {
        this.problem = problem;
        this.unitOf = unitOf;
        Directions = directions;
        Most = Array.ConvertAll(directions, loads.Most);
        Staying = Array.ConvertAll(directions, direction => loads.Staying[direction]);
        positionOf = new int[2 * problem.Show.Links.Count];
        Array.Fill(positionOf, -1);
        crossed = new int[problem.Show.Document.Rig.Networks.Count * problem.DeviceCount * problem.DeviceCount][];
        rates = new long[unitOf.Length * directions.Length];
        isCrossedByStaying = new bool[rates.Length];
        for (var at = 0; at < directions.Length; at++)
        {
            positionOf[directions[at]] = at;
            foreach (var block in problem.TransmitBlocks)
            {
                var unit = unitOf[block.Id];
                rates[(unit * Count) + at] = block.IsKept ? loads.OfStaying(block) : loads.Of(problem.Network.NetworkOf(directions[at] / 2), block);
                isCrossedByStaying[(unit * Count) + at] = block.IsKept && loads.IsCrossed(block.KeptStream, directions[at]);
            }
        }
    }

    /// <summary>How many directions there are.</summary>
    public int Count => Directions.Length;

    /// <summary>For each twice the position of its link in the rig, and one more when it leads from the link's second jack to its first.</summary>
    public int[] Directions { get; }

    /// <summary>What may be reserved of each, in bit/s.</summary>
    public long[] Most { get; }

    /// <summary>What streams that stay take of each, in bit/s; may be more than <see cref="Most"/>, and then no other stream may pass.</summary>
    public long[] Staying { get; }

    /// <summary>The unit of a transmit block; units are numbered like blocks, with gaps.</summary>
    public int UnitOf(int transmitBlock) => unitOf[transmitBlock];

    /// <summary>What a unit takes of a direction, in bit/s.</summary>
    public long Rate(int unit, int at) => rates[(unit * Count) + at];

    /// <summary>True when a stream that stays passes a direction with the unit already.</summary>
    public bool IsCrossedByStaying(int unit, int at) => isCrossedByStaying[(unit * Count) + at];

    /// <summary>The directions among these that a stream passes from one device to another; none without a network.</summary>
    public int[] Crossed(int network, int sender, int receiver)
    {
        if (Count == 0 || network < 0)
        {
            return [];
        }

        ref var known = ref crossed[(((network * problem!.DeviceCount) + sender) * problem.DeviceCount) + receiver];
        return known ??= [
            .. problem
                .Network.Directions(network, problem.Show.Devices[sender], problem.Show.Devices[receiver])
                .Select(direction => positionOf[direction])
                .Where(at => at >= 0)
                .Order(),
        ];
    }

    /// <summary>The directions among these that a delivery over a stream passes.</summary>
    public int[] Crossed(Delivery delivery) =>
        delivery.IsLocal || Count == 0 ? [] : Crossed(problem!.NetworkFrom(delivery.Sender, delivery.Receiver), delivery.Sender, delivery.Receiver);
}
