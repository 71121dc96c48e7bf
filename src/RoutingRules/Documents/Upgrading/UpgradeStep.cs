using RoutingRules.Model;

namespace RoutingRules.Documents.Upgrading;

/// <summary>What one step from a format version to the next changed in a document.</summary>
public sealed record UpgradeStep
{
    /// <summary>The version before.</summary>
    public required long From { get; init; }

    /// <summary>The version after: the next one.</summary>
    public required long To { get; init; }

    /// <summary>What was changed beside <c>schemaVersion</c>, in the order of the text; empty when nothing was.</summary>
    public ValueList<string> Changes { get; init; }
}
