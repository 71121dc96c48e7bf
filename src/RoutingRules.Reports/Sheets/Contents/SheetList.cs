using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A list with named columns; every row has as many texts as there are columns.</summary>
public sealed record SheetList
{
    /// <summary>Which list it is.</summary>
    public required SheetListKind Kind { get; init; }

    /// <summary>What a person calls it; at most 31 characters, as workbooks need.</summary>
    public required string Title { get; init; }

    /// <summary>The columns, each name once.</summary>
    public ValueList<string> Columns { get; init; }

    /// <summary>The rows. Texts are as in the document but that characters no file can hold are written out; formulas are not yet neutralised.</summary>
    public ValueList<ValueList<string>> Rows { get; init; }
}
