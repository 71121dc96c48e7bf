using RoutingRules.Checking.Catalogue;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Planning.Comparing;

/// <summary>What differs between two shows: what is heard where, what is plugged where, what the rules say, and what the documents say.</summary>
/// <remarks>Immutable, with value equality over every member. Devices that were renamed go by their ids in the second show throughout.</remarks>
public sealed record ShowComparison
{
    /// <summary>Outputs and channels whose source changes, outputs that serve in-ear feeds first, then in rig order.</summary>
    public required ValueList<SinkChange> Sinks { get; init; }

    /// <summary>Feeds and lines that are new, gone, renamed or elsewhere, in the order of the second show, those that are gone last.</summary>
    public required ValueList<DemandChange> Demands { get; init; }

    /// <summary>Changes of the documents, entity by entity.</summary>
    public required ValueList<EntityChange> Entities { get; init; }

    /// <summary>Dangers of the change itself, which neither show has by itself; see <see cref="ChangeRules"/>.</summary>
    public required ValueList<Finding> Hazards { get; init; }

    /// <summary>Findings of the second show that the first does not have.</summary>
    public required ValueList<Finding> NewFindings { get; init; }

    /// <summary>Findings of the first show that the second no longer has.</summary>
    public required ValueList<Finding> ResolvedFindings { get; init; }

    /// <summary>Findings that both have, as the second show gives them.</summary>
    public required ValueList<Finding> UnchangedFindings { get; init; }

    /// <summary>What no rule could decide about the second show.</summary>
    public required ValueList<UndecidedSubject> Undecided { get; init; }

    /// <summary>True when both documents say the same, whatever their layout.</summary>
    public bool IsEmpty => Entities.IsEmpty;
}
