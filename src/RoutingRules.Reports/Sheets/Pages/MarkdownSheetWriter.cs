using System.Globalization;
using System.Text;
using RoutingRules.Model;
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
        return Write(PageLayout.Set(sheet));
    }

    internal static string Write(PageSet set)
    {
        var output = new StringBuilder();
        var title = MarkdownText.Escape(set.Title);
        var meta = MarkdownText.Escape(string.Join(PageSet.Dot, set.Meta));
        output.Append(CultureInfo.InvariantCulture, $"# {title}\n{(set.Meta.IsEmpty || set.ViewNote is not null ? "" : $"\n{meta}\n")}");
        WriteCautions(output, set.RepeatsCautions ? null : set.Cautions);
        foreach (var page in set.Pages)
        {
            output.Append(
                CultureInfo.InvariantCulture,
                $"\n---\n\n## {Heading(set, page)}\n{(set.ViewNote is null ? "" : $"\n**{title}**{PageSet.Dot}{meta}\n")}"
            );
            foreach (var sentence in set.ViewNote is { } note ? page.Facts.Append(note) : page.Facts)
            {
                output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(sentence.Trim())}\n");
            }

            WriteCautions(output, set.RepeatsCautions ? set.Cautions : null);
            foreach (var table in page.Tables)
            {
                WriteTable(output, table);
            }
        }

        return output.ToString();
    }

    /// <summary>What stands beside the title is escaped apart from it where pages are of devices, whose ids and places it holds.</summary>
    private static string Heading(PageSet set, Page page) =>
        page.Aside is { } aside && set.RepeatsCautions
            ? $"{MarkdownText.Escape(page.Title)} ({MarkdownText.Escape(aside)})"
            : MarkdownText.Escape(page.Heading);

    private static void WriteCautions(StringBuilder output, ValueList<string>? cautions)
    {
        if (cautions is { } list)
        {
            output.Append(
                CultureInfo.InvariantCulture,
                $"\n### {PageLayout.CautionsTitle}\n\n{string.Concat(list.Select(caution => $"- {MarkdownText.Escape(caution)}\n"))}"
            );
        }
    }

    private static void WriteTable(StringBuilder output, PageTable table)
    {
        output.Append(
            CultureInfo.InvariantCulture,
            $"\n### {MarkdownText.Escape(table.Title)}\n\n| {string.Join(" | ", table.Columns.Select(column => MarkdownText.Escape(column.Heading)))} |\n|"
        );
        output.Append(string.Concat(Enumerable.Repeat("---|", table.Columns.Length))).Append('\n');
        foreach (var row in table.Rows)
        {
            var cells =
                row.IsBlank ? []
                : row.Across is { } across ? [row.IsHeading ? $"**{MarkdownText.Escape(across)}**" : MarkdownText.Escape(across)]
                : row.Cells.Select(cell => string.Join("<br>", cell.Select(Line))).ToArray();
            output
                .Append("| ")
                .AppendJoin(" | ", cells.Concat(Enumerable.Repeat("", table.Columns.Length - Math.Min(cells.Length, table.Columns.Length))))
                .Append(" |\n");
        }
    }

    private static string Line(PageLine line) =>
        line.Style switch
        {
            PageLineStyle.Tick => $"\u2610 {MarkdownText.Escape(line.Text)}".TrimEnd(),
            PageLineStyle.Plain => MarkdownText.Escape(line.Text),
            PageLineStyle.Change => $"\u25b6 **{MarkdownText.Escape(line.Text)}**",
            PageLineStyle.Bar => MarkdownText.Escape($"{TextTable.Bar(line)} {line.Text}"),
            _ => $"**{MarkdownText.Escape(line.Text)}**",
        };
}
