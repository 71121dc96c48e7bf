using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>A fix that was taken.</summary>
public sealed record AppliedFix
{
    /// <summary>The finding that is gone, as it was before.</summary>
    public required Finding Finding { get; init; }

    /// <summary>The fix; one that its provider calls safe is unsafe here when it did not hold as such.</summary>
    public required Fix Fix { get; init; }

    /// <summary>Every output and channel that carries another source than before, in the order of the rig; empty for a safe fix.</summary>
    public ValueList<SinkMove> Moves { get; init; }
}
