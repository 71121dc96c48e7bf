using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Who listens to which mix, on what, from which output: one feed that has a person or a pack, or that goes into ears.</summary>
public sealed record SheetPack
{
    /// <summary>The feed.</summary>
    public required Id<Feed> Id { get; init; }

    /// <summary>The name or id of the feed.</summary>
    public required string Mix { get; init; }

    /// <summary>What the feed is for.</summary>
    public required FeedRole Role { get; init; }

    /// <summary>True when it ends in somebody's ears, whatever it is said to be for.</summary>
    public bool IsInEar { get; init; }

    /// <summary>Who listens; null when the document does not say.</summary>
    public string? Person { get; init; }

    /// <summary>The receiver pack; null when the document does not say.</summary>
    public string? Pack { get; init; }

    /// <summary>Where on stage.</summary>
    public string? Position { get; init; }

    /// <summary>The bus, in words.</summary>
    public required string Source { get; init; }

    /// <summary>Whether a limiter is declared; null when nothing was said.</summary>
    public bool? Limiter { get; init; }

    /// <summary>Where it arrives, one path for each destination and half of a pair; empty when nowhere.</summary>
    public ValueList<SheetPath> Outputs { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
