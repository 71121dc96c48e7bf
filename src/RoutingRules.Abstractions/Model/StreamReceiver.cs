namespace RoutingRules.Model;

/// <summary>One receiver of a stream.</summary>
public sealed record StreamReceiver
{
    /// <summary>The receive slots.</summary>
    public required PointRange At { get; init; }

    /// <summary>The stream channels it takes; null takes all.</summary>
    public NumberRange? Channels { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
