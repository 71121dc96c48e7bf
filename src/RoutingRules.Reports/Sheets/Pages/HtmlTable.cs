using System.Globalization;
using System.Text;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Tables in HTML: as they are, or with short rows in columns side by side.</summary>
internal static class HtmlTable
{
    /// <summary>A table of so few rows is not broken.</summary>
    private const int FewRows = 3;

    /// <summary>So many columns of boxes have room beside a text; more stand in it.</summary>
    private const int MostTicks = 3;

    /// <summary>Tables that follow each other with equally many columns of rows flow on in these.</summary>
    public static void Write(StringBuilder output, IReadOnlyList<PageTable> tables)
    {
        for (var i = 0; i < tables.Count; )
        {
            var end = i + 1;
            while (end < tables.Count && tables[end].RowColumns == tables[i].RowColumns)
            {
                end++;
            }

            if (tables[i].RowColumns < 2)
            {
                Write(output, tables[i]);
                i++;
                continue;
            }

            output.Append(CultureInfo.InvariantCulture, $"<div class=\"flow{tables[i].RowColumns}\">\n");
            for (; i < end; i++)
            {
                WriteDense(output, tables[i]);
            }

            output.Append("</div>\n");
        }
    }

    private static void Write(StringBuilder output, PageTable table)
    {
        var total = table.Columns.Sum(column => column.Share);
        Head(output, table, table.HasBigFirst ? "points" : null, [.. table.Columns.Select(column => (column.Heading, 100.0 * column.Share / total))]);
        foreach (var row in table.Rows)
        {
            WriteRow(output, row, row.Cells.Length == 0 ? [] : [.. row.Cells.Select(HtmlCell.Stacked)], table.Columns.Length, table.Columns.Length);
        }

        output.Append("</tbody>\n</table>\n");
    }

    /// <summary>The first cell where it is what to look for, then all that is said as one text, then what is ticked.</summary>
    private static void WriteDense(StringBuilder output, PageTable table)
    {
        var first = table.HasBigFirst ? 1 : 0;
        var ticks = table.Columns.Length;
        while (ticks > first + 1 && table.Columns.Length - ticks < MostTicks && IsTicked(table, ticks - 1))
        {
            ticks--;
        }

        var columns = new List<(string Heading, double Percent)>();
        if (first == 1)
        {
            columns.Add((table.Columns[0].Heading, table.FirstPercent));
        }

        columns.Add((table.Columns[first].Heading, 0));
        for (var i = ticks; i < table.Columns.Length; i++)
        {
            columns.Add(
                (
                    table.Columns[i].Heading,
                    table.Rows.Exists(row => row.Cells.Length > 0 && row.Cells[i].Exists(line => line.Text.Length > 0)) ? 16
                    : table.NeedsHeadings ? 13
                    : 9
                )
            );
        }

        columns[first] = (columns[first].Heading, 100 - columns.Sum(column => column.Percent));
        Head(
            output,
            table,
            $"{(table.HasBigFirst ? "points " : "")}dense{(table.NeedsHeadings ? "" : " titled")}{(table.Rows.Count <= FewRows ? " few" : "")}",
            columns
        );
        foreach (var row in table.Rows)
        {
            var cells = new List<string>();
            if (row.Cells.Length > 0)
            {
                if (first == 1)
                {
                    cells.Add(HtmlCell.Stacked(row.Cells[0]));
                }

                cells.Add(HtmlCell.Joined(Text(table, row, first, ticks)));
                cells.AddRange(row.Cells[ticks..].Select(HtmlCell.Stacked));
            }

            WriteRow(output, row, cells, columns.Count, columns.Count - (table.Columns.Length - ticks));
        }

        output.Append("</tbody>\n</table>\n");
    }

    /// <summary>What is said between the first cell and the boxes: what the eye looks for, then all else that is no repetition of it.</summary>
    private static List<PageLine> Text(PageTable table, PageRow row, int first, int end)
    {
        var lines = Enumerable.Range(first, end - first).SelectMany(i => row.Cells[i].Zip(Led(table, row, i))).ToList();
        var name = lines.FindIndex(line => line.First.Style == PageLineStyle.Strong);
        if (name < 0)
        {
            return [.. lines.Select(line => line.Second)];
        }

        var text = lines[name].First.Text;
        return
        [
            lines[name].Second,
            .. lines.Where((line, i) => i != name && !line.First.Text.AsSpan().Trim().SequenceEqual(text.AsSpan().Trim())).Select(line => line.Second),
        ];
    }

    /// <summary>The lines of a cell with the word that stands for the heading of its column; each box has it, of other lines the first.</summary>
    private static IEnumerable<PageLine> Led(PageTable table, PageRow row, int column)
    {
        var lead = table.Columns[column].Lead;
        return row.Cells[column]
            .Select((line, i) => lead is null || (i > 0 && line.Style != PageLineStyle.Tick) || line.IsAside ? line : line with { Text = lead + line.Text });
    }

    private static bool IsTicked(PageTable table, int column) =>
        table.Rows.Exists(row => row.Cells.Length > 0 && row.Cells[column].Exists(line => line.Style == PageLineStyle.Tick))
        && table.Rows.TrueForAll(row => row.Cells.Length == 0 || row.Cells[column].TrueForAll(line => line.Style is PageLineStyle.Tick or PageLineStyle.Mark));

    private static void Head(StringBuilder output, PageTable table, string? name, IReadOnlyList<(string Heading, double Percent)> columns)
    {
        output.Append(CultureInfo.InvariantCulture, $"<table{(name is null ? "" : $" class=\"{name}\"")}>\n<colgroup>");
        foreach (var (_, percent) in columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{percent:0.##}%\"/>");
        }

        output.Append("</colgroup>\n<thead>\n");
        output.Append(
            CultureInfo.InvariantCulture,
            $"<tr class=\"name\"><th colspan=\"{columns.Count}\" scope=\"colgroup\">{HtmlText.Isolate(table.Title)}</th></tr>\n<tr>"
        );
        foreach (var (heading, _) in columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{HtmlText.Isolate(heading)}</th>");
        }

        output.Append("</tr>\n</thead>\n<tbody>\n");
    }

    private static void WriteRow(StringBuilder output, PageRow row, IReadOnlyList<string> cells, int columns, int ticks)
    {
        if (row.IsBlank)
        {
            output.Append("<tr class=\"blank\">").Insert(output.Length, "<td></td>", columns).Append("</tr>\n");
        }
        else if (row.Across is not null)
        {
            output.Append(
                row.IsHeading
                    ? $"<tr class=\"stop\"><th colspan=\"{SheetWords.Number(columns)}\" scope=\"colgroup\">{HtmlText.Line(row.Across)}</th></tr>\n"
                    : $"<tr><td colspan=\"{SheetWords.Number(columns)}\">{HtmlText.Line(row.Across)}</td></tr>\n"
            );
        }
        else
        {
            output.Append(row.Cells.Any(cell => cell.Any(line => line.Style == PageLineStyle.Change)) ? "<tr class=\"changed\">" : "<tr>");
            for (var i = 0; i < cells.Count; i++)
            {
                output
                    .Append(
                        i == 0 ? "<th scope=\"row\">"
                        : i < ticks ? "<td>"
                        : "<td class=\"tick\">"
                    )
                    .Append(cells[i])
                    .Append(i == 0 ? "</th>" : "</td>");
            }

            output.Append("</tr>\n");
        }
    }
}
