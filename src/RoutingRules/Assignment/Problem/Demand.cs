using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>A demand as the search sees it.</summary>
internal sealed class Demand
{
    public required DemandNode Node { get; init; }

    /// <summary>Position in demand order.</summary>
    public int Index => Node.Index;

    /// <summary>0 critical to 3 low.</summary>
    public required int Tier { get; init; }

    /// <summary>What leaving it out counts in its tier: 1 for a feed entry, the number of sinks for a line.</summary>
    public required int Weight { get; init; }

    /// <summary>True for a feed entry that names its point: it is placed or the pins contradict.</summary>
    public required bool IsPinned { get; init; }

    /// <summary>First point where it is served in the input; -1 when it is not.</summary>
    public int Existing => Node.Existing.Value;

    public required Candidate[] Candidates { get; init; }

    /// <summary>The wanted number, or 0.</summary>
    public required int Preferred { get; init; }

    /// <summary>Number of its set, or -1.</summary>
    public required int Set { get; init; }

    /// <summary>Number of its part; equal parts of a set are never compared.</summary>
    public required int Part { get; init; }

    /// <summary>Number of its group, feeds and lines apart, or -1.</summary>
    public required int Group { get; init; }

    /// <summary>
    /// First points of runs it cannot have because it would arrive there too late; for a line, sinks that are reached too late from everywhere.
    /// </summary>
    public int[] Late { get; init; } = [];

    /// <summary>Demands it must stay apart from, both ways listed.</summary>
    public List<Separate> Separations { get; } = [];

    /// <summary>What it leaves undelivered at least with the choices it has: everything when it has none.</summary>
    public int LeastFailed(int[] choices) => choices.Length == 0 ? Weight : choices.Min(choice => Candidates[choice].Failed);
}
