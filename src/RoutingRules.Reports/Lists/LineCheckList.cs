using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Planning.LineChecks;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Lists;

/// <summary>Reads what a line check found from a list: one connector a row, as the crew writes it beside the printed list of lines.</summary>
/// <remarks>
/// Columns, in any order: the connector (<c>point</c>, <c>connector</c> or <c>enters at</c>), <c>result</c>, and where there is need <c>found at</c> and
/// <c>remark</c>. Others are not read. Rows without a result were not checked. Thread safe.
/// </remarks>
public static class LineCheckList
{
    private const int MaxBytes = 8 * 1024 * 1024;

    private const int MaxProblems = 100;

    private static readonly (string Header, int Column)[] Headers =
    [
        ("point", 0),
        ("connector", 0),
        ("entersat", 0),
        ("result", 1),
        ("foundat", 2),
        ("remark", 3),
        ("remarks", 3),
        ("reason", 3),
    ];

    private static readonly (string Name, LineCheckWord Word)[] Words =
    [
        ("works", LineCheckWord.Works),
        ("ok", LineCheckWord.Works),
        ("good", LineCheckWord.Works),
        ("dead", LineCheckWord.Dead),
        ("broken", LineCheckWord.Dead),
        ("reserved", LineCheckWord.Reserved),
        ("swapped", LineCheckWord.Swapped),
        ("crossed", LineCheckWord.Swapped),
        ("moved", LineCheckWord.Moved),
    ];

    /// <summary>Reads a list. Never throws for what the list holds.</summary>
    /// <param name="show">The show that was checked; its names of connectors are understood.</param>
    /// <param name="utf8">The list, CSV after RFC 4180, UTF-8 with or without a byte order mark; the first row that is not blank holds the headers.</param>
    /// <param name="since">The day of the check; null when nobody said.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public static LineCheckListResult Read(ResolvedShow show, ReadOnlySpan<byte> utf8, DateOnly? since = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        var problems = new ListProblems(MaxProblems);
        var (results, lines, unchecked_) = (new List<LineCheckResult>(), new List<int>(), 0);
        if (ListText.Decode(utf8, MaxBytes, problems) is { } text && Rows(text, problems) is var (columns, rows) && columns.Length > 0)
        {
            var lookup = new NameLookup(show);
            foreach (var row in rows)
            {
                if (Cell(row, columns[1]).Length == 0)
                {
                    unchecked_++;
                }
                else if (Result(row, columns, lookup, since, problems) is { } result && !results.Contains(result) && !IsSaidFromTheOtherSide(result, results))
                {
                    results.Add(result);
                    lines.Add(row.Line);
                }
            }
        }

        return new LineCheckListResult
        {
            Results = problems.IsEmpty ? results.ToValueList() : [],
            Lines = problems.IsEmpty ? lines.ToValueList() : [],
            Unchecked = unchecked_,
            Problems = problems.ToList(),
        };
    }

    // Two plugs that are the other way round are found at both connectors.
    private static bool IsSaidFromTheOtherSide(LineCheckResult result, List<LineCheckResult> results) =>
        result.Word == LineCheckWord.Swapped
        && results.Exists(other => other.Word == LineCheckWord.Swapped && other.At == result.Other && other.Other == result.At);

    private static (int[] Columns, List<CsvRow> Rows) Rows(string text, ListProblems problems)
    {
        var rows = CsvReader.Read(text, CsvReader.Guess(text), problems);
        rows.RemoveAll(row => row.IsBlank);
        int[] columns = [-1, -1, -1, -1];
        for (var i = 0; rows.Count > 0 && i < rows[0].Cells.Count; i++)
        {
            var header = ListHeaders.Plain(FormulaGuard.Restore(rows[0].Cells[i].Text));
            var known = Array.Find(Headers, entry => entry.Header == header);
            if (known.Header is not null && columns[known.Column] < 0)
            {
                columns[known.Column] = i;
            }
        }

        if (columns[0] < 0 || columns[1] < 0)
        {
            problems.Add(
                rows.Count > 0 ? rows[0].Line : null,
                null,
                $"no column says {(columns[0] < 0 ? "which connector a row is about" : "what was found")}",
                "Give the columns the headers point, result, and where there is need found at and remark."
            );
            return ([], []);
        }

        return (columns, rows[1..]);
    }

    private static string Cell(CsvRow row, int column) => column >= 0 && column < row.Cells.Count ? FormulaGuard.Restore(row.Cells[column].Text).Trim() : "";

    private static LineCheckResult? Result(CsvRow row, int[] columns, NameLookup lookup, DateOnly? since, ListProblems problems)
    {
        var word = Cell(row, columns[1]);
        var known = Array.Find(Words, entry => string.Equals(entry.Name, word, StringComparison.OrdinalIgnoreCase));
        if (known.Name is null)
        {
            var near = Spelling.Nearest(word, [.. Words.Select(entry => entry.Name)]);
            problems.Add(
                row.Line,
                "result",
                $"'{CellReader.Short(word)}' is no result{(near is null ? "" : $"; did you mean {near}?")}",
                "Write works, dead, reserved, swapped or moved."
            );
            return null;
        }

        var at = Points(row, columns[0], "point", lookup, problems);
        var found = Cell(row, columns[2]).Length == 0 ? null : Points(row, columns[2], "found at", lookup, problems);
        var remark = Cell(row, columns[3]);
        return at is not { } run || (found is null && Cell(row, columns[2]).Length > 0)
            ? null
            : new LineCheckResult
            {
                At = run,
                Word = known.Word,
                Other = found,
                Reason = remark.Length == 0 ? null : remark,
                Since = known.Word == LineCheckWord.Dead ? since : null,
            };
    }

    private static PointRange? Points(CsvRow row, int column, string header, NameLookup lookup, ListProblems problems)
    {
        var text = Cell(row, column);
        if (PointRange.TryParse(text, out var range, out _))
        {
            return range;
        }

        var points = lookup.Points(text);
        if (points.Count == 1)
        {
            return new PointRange(points[0].Device, points[0].Group, points[0].Number, points[0].Number);
        }

        problems.Add(
            row.Line,
            header,
            points.Count == 0 ? $"no connector is called '{CellReader.Short(text)}'" : $"{points.Count} connectors are called '{CellReader.Short(text)}'",
            "Write it as on the sheet, such as SR box B4, or as in the show, such as box-r/in/20."
        );
        return null;
    }
}
