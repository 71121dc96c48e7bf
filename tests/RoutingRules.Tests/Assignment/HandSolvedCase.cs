using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>One instance solved on paper: the show and the solution.</summary>
public sealed record HandSolvedCase
{
    public required string Name { get; init; }

    public required Show Show { get; init; }

    public required AssignmentOptions Options { get; init; }

    public required bool PinsContradict { get; init; }

    /// <summary>Null when pins contradict.</summary>
    public required ObjectiveVector? Vector { get; init; }

    /// <summary>The show with the hand-made patch.</summary>
    public required Show Result { get; init; }

    public required ValueList<Placement> Placements { get; init; }

    public required ValueList<UnplacedDemand> Unplaced { get; init; }

    public required ValueList<string> Moved { get; init; }

    public required ValueList<string> Contradiction { get; init; }

    /// <summary>What each output carries in the input; null for silence.</summary>
    public required ValueList<(PointRange At, PointRange? Source)> InputOutputs { get; init; }

    /// <summary>What each output carries in the result.</summary>
    public required ValueList<(PointRange At, PointRange? Source)> ResultOutputs { get; init; }

    /// <summary>What each sink that a line names carries in the result.</summary>
    public required ValueList<(PointRange At, PointRange? Source)> ResultChannels { get; init; }

    public override string ToString() => Name;
}
