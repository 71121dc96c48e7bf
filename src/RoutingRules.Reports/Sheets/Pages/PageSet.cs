using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Pages that belong together, for any writer.</summary>
internal sealed class PageSet
{
    public const string Dot = " \u00b7 ";

    public required string Title { get; init; }

    /// <summary>Venue, day, revision: what tells this print from others.</summary>
    public required ValueList<string> Meta { get; init; }

    /// <summary>The code of the sheets that all pages go with; null where pages have their own or none.</summary>
    public string? Code { get; init; }

    /// <summary>Whose left and right every page uses; in Markdown its head then stands on every page as well. Null where that does not matter.</summary>
    public string? ViewNote { get; init; }

    /// <summary>What whoever touches equipment with this in hand has to mind; null where nobody does.</summary>
    public ValueList<string>? Cautions { get; init; }

    /// <summary>True when the cautions stand on every page of Markdown too, not once before all.</summary>
    public bool RepeatsCautions { get; init; }

    public bool IsLargeType { get; init; }

    public required List<Page> Pages { get; init; }
}
