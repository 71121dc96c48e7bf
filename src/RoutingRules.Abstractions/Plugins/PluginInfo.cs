namespace RoutingRules.Plugins;

/// <summary>What a plugin says about itself.</summary>
public sealed record PluginInfo
{
    /// <summary>A short id, such as <c>acme-profiles</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The version.</summary>
    public required string Version { get; init; }

    /// <summary>A title of a few words for people.</summary>
    public required string Title { get; init; }
}
