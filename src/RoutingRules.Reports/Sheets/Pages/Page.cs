namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>One part of the sheets that starts a new page, laid out for any writer.</summary>
internal sealed class Page
{
    public required string Title { get; init; }

    /// <summary>What stands beside the title, such as the id of a device; null for none.</summary>
    public string? Aside { get; init; }

    /// <summary>The title with what stands beside it.</summary>
    public string Heading => Aside is null ? Title : $"{Title} ({Aside})";

    /// <summary>The code of the sheets this page goes with, where it is not that of all pages; null for none.</summary>
    public string? Code { get; init; }

    /// <summary>Sentences and facts under the title.</summary>
    public List<string> Facts { get; } = [];

    /// <summary>Drawings after the tables, or alone.</summary>
    public List<SheetFlow> Flows { get; } = [];

    public List<PageTable> Tables { get; } = [];
}
