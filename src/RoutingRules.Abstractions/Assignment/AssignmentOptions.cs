using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>What an assignment may and must do, beside what the document says.</summary>
public sealed record AssignmentOptions
{
    /// <summary>Usable outputs kept free in every port group in which a new demand is placed, 0 or more.</summary>
    public int Spares { get; init; }

    /// <summary>Streams kept free below each device's limits of sent and received streams, 0 or more.</summary>
    public int Headroom { get; init; }

    /// <summary>
    /// How many percent of a link's speed all streams together may take in one direction, from 1 to 100; links without a speed hold everything.
    /// 75 as in IEEE 802.1Q, clause 34.3 (from memory). Streams that must stay may take more by themselves, and then no other stream passes there.
    /// </summary>
    public double LinkPercent { get; init; } = 75;

    /// <summary>
    /// How many milliseconds after leaving its bus or entering a demand may arrive at most, above 0; null for any. Counted are the latencies that profiles
    /// and networks state, of several groups of slots the slowest; recordings and broadcasts may be later.
    /// </summary>
    public double? LatencyMilliseconds { get; init; }

    /// <summary>The same for in-ear feeds and for whatever else ends in somebody's ears; null for <see cref="LatencyMilliseconds"/>.</summary>
    public double? InEarLatencyMilliseconds { get; init; }

    /// <summary>The order of the levels after the first two, a permutation of <see cref="ObjectiveLevel"/> names; empty for the usual order.</summary>
    public ValueList<ObjectiveLevel> Order { get; init; }

    /// <summary>Whether outputs that sound in the patch as it stands, though no demand wants them, may go on sounding.</summary>
    public bool KeepUnlisted { get; init; }

    /// <summary>Devices, links and points that must not be used: ids or addresses.</summary>
    public ValueList<string> Without { get; init; }

    /// <summary>The name of the strategy that searches; null for the default one, <c>exact</c>.</summary>
    public string? Strategy { get; init; }

    /// <summary>Places that single demands must not take, by demand and points; others may take them.</summary>
    public ValueList<Placement> Avoid { get; init; }

    /// <summary>Demands to leave unplaced, pinned and held ones included: ids of lines, or feed ids with the entry, such as <c>main-l/1</c>.</summary>
    public ValueList<string> LeaveOut { get; init; }

    /// <summary>
    /// Whether the account of what finds no place gets its conflict and what would help. That takes further assignments, a bounded number of them,
    /// and nothing when everything is placed.
    /// </summary>
    public bool ExplainUnplaced { get; init; }

    /// <summary>
    /// Whether the result also writes down what follows from the places: phantom power and gain of inputs go with the lines that moved, phantom power is
    /// switched as placed lines need it, and labels of what moved away are taken off.
    /// </summary>
    public bool WriteSettings { get; init; }

    /// <summary>Whether points of the result that have no label get the names of the feeds and lines that are placed there.</summary>
    public bool WriteLabels { get; init; }

    /// <summary>
    /// Whether the points and devices of <see cref="Without"/> are written down as unavailable, so that the next assignment does without them too.
    /// </summary>
    public bool MarkWithout { get; init; }

    /// <summary>Units of search work, 0 or more: the same budget always gives the same result.</summary>
    public long Budget { get; init; } = 500_000;
}
