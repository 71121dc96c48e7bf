using System.Text;
using RoutingRules.Configuration;

namespace RoutingRules.Reports.Lists;

/// <summary>
/// Takes lists apart after RFC 4180: cells in quotes may hold separators, line breaks and, doubled, quotes. Lines may end with CR LF, LF or CR.
/// </summary>
internal sealed class CsvReader
{
    private const char Quote = '"';

    private readonly string text;
    private readonly char separator;
    private readonly ListProblems problems;
    private int at;
    private int line = 1;

    private CsvReader(string text, char separator, ListProblems problems)
    {
        this.text = text;
        this.separator = separator;
        this.problems = problems;
    }

    /// <summary>The rows, blank ones too.</summary>
    public static List<CsvRow> Read(string text, char separator, ListProblems problems)
    {
        var reader = new CsvReader(text, separator, problems);
        var rows = new List<CsvRow>();
        while (reader.at < text.Length)
        {
            rows.Add(reader.Row());
        }

        return rows;
    }

    public static char Of(ListSeparator separator) =>
        separator switch
        {
            ListSeparator.Semicolon => ';',
            ListSeparator.Tab => '\t',
            _ => ',',
        };

    /// <summary>The separator that stands most often, outside quotes, in the first row that is not empty; a comma when none does.</summary>
    public static char Guess(string text)
    {
        char[] known = [',', ';', '\t'];
        var counts = new int[known.Length];
        var isQuoted = false;
        foreach (var letter in text.AsSpan().TrimStart("\r\n"))
        {
            isQuoted ^= letter == Quote;
            if (!isQuoted && letter is '\r' or '\n')
            {
                break;
            }

            if (!isQuoted && Array.IndexOf(known, letter) is >= 0 and var index)
            {
                counts[index]++;
            }
        }

        return known[Array.IndexOf(counts, counts.Max())];
    }

    private CsvRow Row()
    {
        var start = line;
        var cells = new List<CsvCell>();
        do
        {
            cells.Add(Cell());
        } while (Pass(separator));

        BreakLine();
        return new CsvRow(start, cells);
    }

    private CsvCell Cell()
    {
        var start = line;
        if (!Pass(Quote))
        {
            var bare = Bare();
            if (bare.Contains(Quote))
            {
                problems.Add(
                    start,
                    null,
                    $"the cell '{CellReader.Short(bare.ToString())}' holds a quotation mark and is not in quotation marks",
                    "Put the whole cell in quotation marks and double those inside."
                );
            }

            return new CsvCell(bare.ToString(), start);
        }

        var quoted = new StringBuilder();
        while (at < text.Length)
        {
            if (Pass(Quote))
            {
                if (!Pass(Quote))
                {
                    Leftover(start);
                    return new CsvCell(quoted.ToString(), start);
                }

                quoted.Append(Quote);
                continue;
            }

            var from = at;
            if (!BreakLine())
            {
                at++;
            }

            quoted.Append(text, from, at - from);
        }

        problems.Add(
            start,
            null,
            "a cell begins with a quotation mark and never ends",
            "Put a quotation mark at its end, or take the one at its beginning away."
        );
        return new CsvCell(quoted.ToString(), start);
    }

    /// <summary>What follows the closing quotation mark before the next separator.</summary>
    private void Leftover(int start)
    {
        var rest = Bare();
        if (!rest.IsEmpty)
        {
            problems.Add(
                start,
                null,
                $"'{CellReader.Short(rest.ToString())}' follows the closing quotation mark of a cell",
                "Double the quotation marks inside a cell, and write nothing after the last one."
            );
        }
    }

    private ReadOnlySpan<char> Bare()
    {
        var length = text.AsSpan(at).IndexOfAny(separator, '\r', '\n');
        var bare = text.AsSpan(at, length < 0 ? text.Length - at : length);
        at += bare.Length;
        return bare;
    }

    private bool Pass(char letter)
    {
        if (at >= text.Length || text[at] != letter)
        {
            return false;
        }

        at++;
        return true;
    }

    private bool BreakLine()
    {
        if (Pass('\r'))
        {
            Pass('\n');
        }
        else if (!Pass('\n'))
        {
            return false;
        }

        line++;
        return true;
    }
}
