using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>One slip that explains one or more findings, with the repair that makes them go away.</summary>
/// <remarks>The repair was applied to a copy of the show, traced and checked: the findings named were gone, and nothing worse had come.</remarks>
public sealed record Cause
{
    /// <summary>What is wrong, in a sentence for the person at the rig, without a full stop.</summary>
    public required string Title { get; init; }

    /// <summary>How to mend it; a manual one has no edits.</summary>
    public required Fix Repair { get; init; }

    /// <summary>Repairs that would do as well; empty unless it is a tie.</summary>
    public ValueList<Fix> Alternatives { get; init; }

    /// <summary>The fingerprints of the findings that it explains, in the order of the findings.</summary>
    public required ValueList<string> Findings { get; init; }

    /// <summary>How sure it is.</summary>
    public required CauseConfidence Confidence { get; init; }

    /// <summary>The points that get another signal by the repair, or the parts of the rig that it changes.</summary>
    public ValueList<Entity> Places { get; init; }
}
