using RoutingRules.Model;

namespace RoutingRules.Waivers;

/// <summary>The waivers of an archive: one document.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record WaiverList
{
    /// <summary>The format version; 1.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>The waivers; of several that fit a finding the first counts.</summary>
    public ValueList<Waiver> Waivers { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
