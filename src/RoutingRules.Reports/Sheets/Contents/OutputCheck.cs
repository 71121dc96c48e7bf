using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One mix, or one half of a pair, to check.</summary>
public sealed record OutputCheck
{
    /// <summary>The feed.</summary>
    public required Id<Feed> Id { get; init; }

    /// <summary>What to say into the mix: the number of its bus and its name, such as <c>Aux 3, fiddle wedge</c>.</summary>
    public required string Announce { get; init; }

    /// <summary>The group and number of the bus, as on the console.</summary>
    public required string Number { get; init; }

    /// <summary>The name or id of the feed, with L or R for a half of a pair.</summary>
    public required string Name { get; init; }

    /// <summary>What the feed is for.</summary>
    public required FeedRole Role { get; init; }

    /// <summary>True when it ends in somebody's ears, whatever it is said to be for.</summary>
    public bool IsInEar { get; init; }

    /// <summary>The bus, in words.</summary>
    public required string Source { get; init; }

    /// <summary>The text shown at the bus; null when there is none.</summary>
    public string? SourceLabel { get; init; }

    /// <summary>Its places, in the order of the document.</summary>
    public ValueList<OutputTick> Places { get; init; }

    /// <summary>Who listens to it.</summary>
    public string? Person { get; init; }

    /// <summary>The receiver pack.</summary>
    public string? Pack { get; init; }

    /// <summary>Where on stage.</summary>
    public string? Position { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>How to check it without harm.</summary>
    public required string How { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
