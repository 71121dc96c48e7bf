namespace RoutingRules.Model;

/// <summary>A block of transmit slots sent to any number of receivers.</summary>
public sealed record AudioStream
{
    /// <summary>The id that findings name.</summary>
    public required Id<AudioStream> Id { get; init; }

    /// <summary>The network it travels on.</summary>
    public required Id<Network> Network { get; init; }

    /// <summary>The transmit slots; stream channel c is slot first + c - 1.</summary>
    public required PointRange From { get; init; }

    /// <summary>The receivers.</summary>
    public ValueList<StreamReceiver> To { get; init; }

    /// <summary>Whether an assignment must keep it although no feed or line uses it.</summary>
    public bool Keep { get; init; }

    /// <summary>What people call it.</summary>
    public string? Label { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
