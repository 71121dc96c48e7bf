using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Pages that belong together, for people.</summary>
internal sealed class PageSet
{
    public required string Title { get; init; }

    /// <summary>Venue, day, revision: what tells this print from others.</summary>
    public required ValueList<string> Meta { get; init; }

    /// <summary>The code of the sheets that all pages go with; null where pages have their own or none.</summary>
    public string? Code { get; init; }

    /// <summary>True when somebody will touch equipment with this in hand.</summary>
    public bool HasCautions { get; init; }

    public required List<Page> Pages { get; init; }
}
