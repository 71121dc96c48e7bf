namespace RoutingRules.Model;

/// <summary>A network cable between two network jacks.</summary>
public sealed record Link
{
    /// <summary>The id that paths name.</summary>
    public required Id<Link> Id { get; init; }

    /// <summary>The network it belongs to.</summary>
    public required Id<Network> Network { get; init; }

    /// <summary>One jack, width 1.</summary>
    public required PointRange From { get; init; }

    /// <summary>The other jack, width 1.</summary>
    public required PointRange To { get; init; }

    /// <summary>What it is made of.</summary>
    public Medium? Medium { get; init; }

    /// <summary>Length in metres, above 0.</summary>
    public double? LengthMetres { get; init; }

    /// <summary>Speed in Mbit/s, from 1.</summary>
    public int? SpeedMbps { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
