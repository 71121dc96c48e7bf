using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A link of a network and what its streams load it with.</summary>
public sealed record NetworkLink
{
    /// <summary>The link.</summary>
    public required Id<Link> Id { get; init; }

    /// <summary>Its first jack, in words.</summary>
    public required string From { get; init; }

    /// <summary>Its second jack, in words.</summary>
    public required string To { get; init; }

    /// <summary>Kind, length and speed of the cable, in words; null when nothing was said.</summary>
    public string? Cable { get; init; }

    /// <summary>Bits per second it can carry in each direction; null when nothing was said.</summary>
    public double? Speed { get; init; }

    /// <summary>Bits per second of the streams from the first jack to the second, each stream once.</summary>
    public required double Forward { get; init; }

    /// <summary>The same the other way.</summary>
    public required double Backward { get; init; }

    /// <summary>True when a stream crosses whose load is not known.</summary>
    public bool IsPartial { get; init; }
}
