namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>How late signals of one kind arrive at the places that ask for them.</summary>
public sealed record SheetLatency
{
    /// <summary>A role of feeds, or lines.</summary>
    public required string What { get; init; }

    /// <summary>How many places were looked at.</summary>
    public required int Count { get; init; }

    /// <summary>How many of these lie behind a part that states no latency and are not in the figures.</summary>
    public int Unknown { get; init; }

    /// <summary>The shortest known latency in milliseconds; null when none is known.</summary>
    public double? Shortest { get; init; }

    /// <summary>Where that is.</summary>
    public string? ShortestAt { get; init; }

    /// <summary>The longest known latency in milliseconds; null when none is known.</summary>
    public double? Longest { get; init; }

    /// <summary>Where that is.</summary>
    public string? LongestAt { get; init; }
}
