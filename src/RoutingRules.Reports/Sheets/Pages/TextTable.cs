using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Tables in plain text: columns as wide as their text, shrunk to fit the line, cells wrapped at words.</summary>
internal static class TextTable
{
    private const int Gap = 2;
    private const int NarrowestColumn = 8;

    public static void Write(StringBuilder output, PageTable table)
    {
        output.Append(VisibleText.OfPlain(table.Title)).Append('\n');
        var headings = table.Columns.Select(column => VisibleText.OfPlain(column.Heading)).ToArray();
        var rows = table.Rows.Select(Cells).ToArray();
        var widths = Widths(headings, rows);
        AppendRow(output, [.. headings.Select(heading => new List<string> { heading })], widths);
        output.Append('-', TextSheetWriter.LineLength).Append('\n');
        for (var i = 0; i < rows.Length; i++)
        {
            var row = table.Rows[i];
            if (row.IsBlank)
            {
                output.AppendJoin(new string(' ', Gap), widths.Select(width => new string('_', width))).Append('\n');
            }
            else if (row.Across is not null)
            {
                output.AppendJoin(
                    "",
                    Wrap(VisibleText.OfPlain(row.Across), TextSheetWriter.LineLength).Select(line => (row.IsHeading ? "\n" : "") + line + "\n")
                );
            }
            else
            {
                AppendRow(output, rows[i], widths);
            }
        }
    }

    private static List<string>[] Cells(PageRow row) => [.. row.Cells.Select(cell => cell.Select(Line).ToList())];

    private static string Line(PageLine line)
    {
        var text = VisibleText.OfPlain(line.Text);
        return line.Style switch
        {
            PageLineStyle.Tick => $"[ ] {text}".TrimEnd(),
            PageLineStyle.Mark or PageLineStyle.Stop => $"<{text}>",
            PageLineStyle.Change => $">> {text}",
            PageLineStyle.Bar => $"{Bar(line)} {text}",
            _ => text,
        };
    }

    private const int BarLength = 12;

    /// <summary>A bar such as <c>[####     |   ]</c>.</summary>
    public static string Bar(PageLine line)
    {
        var bar = new char[BarLength];
        for (var i = 0; i < BarLength; i++)
        {
            bar[i] =
                (i + 0.5) / BarLength <= line.Share ? '#'
                : i == (int)(line.Limit * BarLength) ? '|'
                : '.';
        }

        return $"[{new string(bar)}]";
    }

    private static int[] Widths(string[] headings, List<string>[][] rows)
    {
        var widths = headings.Select(Width).ToArray();
        foreach (var row in rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                widths[i] = Math.Max(widths[i], row[i].Select(Width).DefaultIfEmpty(0).Max());
            }
        }

        var room = TextSheetWriter.LineLength - (Gap * (widths.Length - 1));
        while (widths.Sum() > room && widths.Max() > NarrowestColumn)
        {
            widths[Array.IndexOf(widths, widths.Max())]--;
        }

        return widths;
    }

    private static void AppendRow(StringBuilder output, List<string>[] cells, int[] widths)
    {
        var wrapped = cells.Select((cell, i) => cell.SelectMany(line => Wrap(line, widths[i])).ToArray()).ToArray();
        for (var line = 0; line < wrapped.Max(cell => cell.Length); line++)
        {
            var text = new StringBuilder();
            for (var i = 0; i < wrapped.Length; i++)
            {
                var part = line < wrapped[i].Length ? wrapped[i][line] : "";
                text.Append(part).Append(' ', i + 1 < wrapped.Length ? Math.Max(0, widths[i] - Width(part)) + Gap : 0);
            }

            output.Append(text.ToString().TrimEnd()).Append('\n');
        }
    }

    /// <summary>Lines of a text, broken at spaces, or inside a word that is longer than a line.</summary>
    public static IEnumerable<string> Wrap(string text, int width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var rest = word;
            if (line.Length > 0 && Width(line) + 1 + Width(rest) <= width)
            {
                line += " " + rest;
                continue;
            }

            if (line.Length > 0)
            {
                yield return line;
            }

            while (Width(rest) > width)
            {
                var cut = Fitting(rest, width);
                yield return rest[..cut];
                rest = rest[cut..];
            }

            line = rest;
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }

    private static int Fitting(string text, int width)
    {
        var cut = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            if (width <= 0 && cut > 0)
            {
                break;
            }

            width -= Width(rune);
            cut += rune.Utf16SequenceLength;
        }

        return cut;
    }

    /// <summary>Characters that take a place of their own; marks that stand on another one take none.</summary>
    private static int Width(string text) => text.EnumerateRunes().Sum(Width);

    private static int Width(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format ? 0 : 1;
}
