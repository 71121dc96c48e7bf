using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What a point carries.</summary>
public sealed record SheetSignal
{
    /// <summary>Names of the feeds, or else of the lines, with L or R for a half of a pair; empty when no feed or line names the source.</summary>
    public ValueList<string> Names { get; init; }

    /// <summary>Roles of those feeds, each once; empty for lines.</summary>
    public ValueList<FeedRole> Roles { get; init; }

    /// <summary>The bus, input or other point the names belong to; the real source when nothing names it.</summary>
    public required SheetPlace Source { get; init; }

    /// <summary>The text shown at the source; null when there is none.</summary>
    public string? SourceLabel { get; init; }
}
