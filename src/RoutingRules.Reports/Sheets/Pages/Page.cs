namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>One part of the sheets that starts a new page, laid out for any writer.</summary>
internal sealed class Page
{
    // About a third of a sheet of A4 with rows of two lines; rows side by side count for less.
    private const double ShortRows = 10;

    public required string Title { get; init; }

    /// <summary>What stands beside the title, such as the id of a device; null for none.</summary>
    public string? Aside { get; init; }

    /// <summary>The title with what stands beside it.</summary>
    public string Heading => Aside is null ? Title : $"{Title} ({Aside})";

    /// <summary>The code of the sheets this page goes with, where it is not that of all pages; null for none.</summary>
    public string? Code { get; init; }

    /// <summary>True for the first page of a hand-out, which has all cautions; others have them in one sentence.</summary>
    public bool HasAllCautions { get; set; } = true;

    /// <summary>True for a page that need not be handed to somebody alone.</summary>
    public bool MaySharePaper { get; set; }

    /// <summary>True for a page so short that it shares its paper with the one before.</summary>
    public bool SharesPaper => MaySharePaper && Flows.Count == 0 && Tables.Sum(table => table.Rows.Count / (double)table.RowColumns) < ShortRows;

    /// <summary>True for a page that begins below the one before, however long both are: nobody gets one without the other.</summary>
    public bool FollowsOn { get; set; }

    /// <summary>Sentences and facts under the title.</summary>
    public List<string> Facts { get; } = [];

    /// <summary>Drawings after the tables, or alone.</summary>
    public List<SheetFlow> Flows { get; } = [];

    public List<PageTable> Tables { get; } = [];
}
