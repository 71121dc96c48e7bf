using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>What stands at the top of every sheet.</summary>
public sealed record SheetHead
{
    /// <summary>What the show is called.</summary>
    public required string Title { get; init; }

    /// <summary>Where it takes place; null when the document does not say.</summary>
    public string? Venue { get; init; }

    /// <summary>The day of the show; null when the document does not say.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The revision of the document; null when it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>Six characters that follow from the content of the document: two sheets with different codes are of different documents.</summary>
    public required string Code { get; init; }

    /// <summary>Whose left and right the sheet uses.</summary>
    public required SheetView View { get; init; }

    /// <summary>The older revision whose differences are marked; null when nothing is compared.</summary>
    public SheetSince? Since { get; init; }

    /// <summary>Labels of the devices that were asked for; empty when the sheet shows all.</summary>
    public ValueList<string> Selection { get; init; }
}
