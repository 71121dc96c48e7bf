using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>The best there is, found by trying everything.</summary>
public sealed record BruteForceResult
{
    /// <summary>The best vector; null when pins contradict.</summary>
    public ObjectiveVector? Vector { get; init; }

    /// <summary>A show that has it; null when pins contradict.</summary>
    public Show? Show { get; init; }

    /// <summary>Where the placed demands are.</summary>
    public ValueList<Placement> Placements { get; init; }

    /// <summary>What is not delivered.</summary>
    public ValueList<UnplacedDemand> Unplaced { get; init; }

    /// <summary>Keys of demands with a failed delivery, in demand order; the tie rule settles them, so they are as binding as the vector.</summary>
    public ValueList<string> Failed { get; init; }

    /// <summary>Every smallest set of pins that cannot hold together.</summary>
    public ValueList<ValueList<string>> Contradictions { get; init; }
}
