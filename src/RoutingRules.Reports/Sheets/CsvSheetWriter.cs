using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Writes a list of a sheet as CSV after RFC 4180.</summary>
/// <remarks>
/// A head row, then one row for each entry; fields with commas between, rows ended by CR LF, quoted where the RFC asks for it. The last columns say of
/// which show, date, revision, code and view the row is; the very last carries the cautions, in the first row only, so that sorting and filtering lose
/// none of the identity. An empty list has one row with these columns alone. Texts that a spreadsheet would take for formulas are neutralised by
/// <see cref="FormulaGuard"/>. Thread safe.
/// </remarks>
public static class CsvSheetWriter
{
    private static readonly ValueList<string> Identity = ["Show", "Date", "Revision", "Code", "View", "Before you touch anything"];

    /// <summary>Writes a list.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet, SheetListKind kind)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var list = SheetLists.Of(sheet, kind);
        var output = new StringBuilder();
        Append(output, [.. list.Columns, .. Identity]);
        var rows = list.Rows.IsEmpty ? [Enumerable.Repeat("", list.Columns.Count).ToValueList()] : list.Rows;
        for (var i = 0; i < rows.Count; i++)
        {
            Append(output, [.. rows[i], .. Head(sheet.Head), i == 0 ? string.Join(" ", sheet.Cautions) : ""]);
        }

        return output.ToString();
    }

    private static void Append(StringBuilder output, ValueList<string> fields) =>
        CsvText.AppendRow(output, fields.Select(FormulaGuard.Neutralise).ToValueList());

    private static IEnumerable<string> Head(SheetHead head) =>
        new[]
        {
            head.Title,
            head.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            head.Revision ?? "",
            head.Code,
            SheetWords.View(head.View),
        }.Select(VisibleText.Of);
}
