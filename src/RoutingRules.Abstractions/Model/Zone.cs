namespace RoutingRules.Model;

/// <summary>A declared place with its side and its walking order.</summary>
public sealed record Zone
{
    /// <summary>The id that devices name.</summary>
    public required Id<Zone> Id { get; init; }

    /// <summary>What people call the place.</summary>
    public string? Name { get; init; }

    /// <summary>The side as seen by the audience.</summary>
    public ZoneSide Side { get; init; }

    /// <summary>Position in the walking order of a line check, from 1.</summary>
    public int? Walk { get; init; }

    /// <summary>Zones close by.</summary>
    public ValueList<Id<Zone>> Near { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
