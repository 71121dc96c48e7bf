using System.Globalization;
using System.Text;
using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Writes sheets as Markdown with tables.</summary>
/// <remarks>Texts of the document are escaped, so that they show as written. Lines of a cell are joined by a line break tag. LF only. Thread safe.</remarks>
public static class MarkdownSheetWriter
{
    /// <summary>Writes sheets.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var output = new StringBuilder();
        output.Append(CultureInfo.InvariantCulture, $"# {MarkdownText.Escape(sheet.Head.Title)}\n");
        foreach (var page in PageLayout.Pages(sheet))
        {
            output.Append(CultureInfo.InvariantCulture, $"\n---\n\n## {MarkdownText.Escape(page.Title)}{(page.Aside is null ? "" : $" ({MarkdownText.Escape(page.Aside)})")}\n\n");
            output.Append(CultureInfo.InvariantCulture, $"**{MarkdownText.Escape(sheet.Head.Title)}** \u00b7 {MarkdownText.Escape(string.Join(" \u00b7 ", PageLayout.Meta(sheet.Head)))}\n");
            foreach (var fact in page.Facts)
            {
                output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(fact.Trim())}\n");
            }

            output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(SheetWords.ViewNote(sheet.Head.View))}\n\n### {PageLayout.CautionsTitle}\n\n");
            foreach (var caution in sheet.Cautions)
            {
                output.Append(CultureInfo.InvariantCulture, $"- {MarkdownText.Escape(caution)}\n");
            }

            foreach (var table in page.Tables)
            {
                WriteTable(output, table);
            }
        }

        return output.ToString();
    }

    internal static void WriteTable(StringBuilder output, PageTable table)
    {
        output.Append(CultureInfo.InvariantCulture, $"\n### {MarkdownText.Escape(table.Title)}\n\n| {string.Join(" | ", table.Columns.Select(column => MarkdownText.Escape(column.Heading)))} |\n|");
        output.Append(string.Concat(Enumerable.Repeat("---|", table.Columns.Length))).Append('\n');
        foreach (var row in table.Rows)
        {
            var cells = row.Slots.Length > 0 ? [$"**{MarkdownText.Escape(string.Join(", ", row.Slots))}**", "free"]
                : row.IsBlank ? []
                : row.Across is { } across ? [row.IsHeading ? $"**{MarkdownText.Escape(across)}**" : MarkdownText.Escape(across)]
                : row.Cells.Select(cell => string.Join("<br>", cell.Select(Line))).ToArray();
            output.Append("| ").AppendJoin(" | ", cells.Concat(Enumerable.Repeat("", table.Columns.Length - Math.Min(cells.Length, table.Columns.Length)))).Append(" |\n");
        }
    }

    private static string Line(PageLine line) => line.Style switch
    {
        PageLineStyle.Tick => $"\u2610 {MarkdownText.Escape(line.Text)}".TrimEnd(),
        PageLineStyle.Plain => MarkdownText.Escape(line.Text),
        PageLineStyle.Change => $"\u25b6 **{MarkdownText.Escape(line.Text)}**",
        PageLineStyle.Bar => MarkdownText.Escape($"{TextTable.Bar(line)} {line.Text}"),
        _ => $"**{MarkdownText.Escape(line.Text)}**",
    };
}
