using RoutingRules.Model;

namespace RoutingRules.Waivers;

/// <summary>Findings that were there when checking began, and that nobody shall be stopped by: identities, never counts or places.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record Baseline
{
    /// <summary>The format version; 1.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>The documents with known findings, each path once, in ordinal order of paths.</summary>
    public ValueList<BaselineDocument> Documents { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
