namespace RoutingRules.Model;

/// <summary>A feed to stay apart from.</summary>
public sealed record Separation
{
    /// <summary>The other feed.</summary>
    public required Id<Feed> Feed { get; init; }

    /// <summary>What the two must not share.</summary>
    public required SeparationBy By { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
