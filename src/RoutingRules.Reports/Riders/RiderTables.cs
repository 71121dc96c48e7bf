using System.Globalization;
using RoutingRules.Reports.Lists;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Riders;

/// <summary>Takes the tables of inputs and mixes out of a list as bands write it: titles, headings, empty rows and totals stand between.</summary>
internal sealed class RiderTables
{
    private static readonly string[] Totals = ["total", "totals", "sum", "totalinputs", "totalchannels", "totalmixes"];

    private readonly ListProblems questions;
    private RiderColumns? columns;
    private string heading = "";

    private RiderTables(ListProblems questions) => this.questions = questions;

    public List<RiderInput> Inputs { get; } = [];

    public List<RiderMix> Mixes { get; } = [];

    /// <summary>Reads the rows; what cannot be understood becomes a question.</summary>
    public static RiderTables Read(List<CsvRow> rows, ListProblems questions)
    {
        var tables = new RiderTables(questions);
        foreach (var row in rows)
        {
            tables.Read(row.Line, [.. row.Cells.Select(cell => Plain(FormulaGuard.Restore(cell.Text)))]);
        }

        tables.JoinSides();
        return tables;
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private void Read(int line, List<string> cells)
    {
        var filled = cells.FindAll(cell => cell.Length > 0);
        if (filled.Count == 0 || Totals.Contains(ListHeaders.Plain(filled[0]).TrimEnd(':'), StringComparer.Ordinal))
        {
            return;
        }

        if (RiderColumns.Of(cells) is { } found)
        {
            (columns, heading) = (found, "");
        }
        else if (columns is null)
        {
            // A title, an address, a date: what stands before the first table is no part of it.
        }
        else if (columns.IsOfMixes)
        {
            AddMix(line, cells);
        }
        else if (filled.Count == 1 && columns.Cell(cells, "what").Length == 0 | columns.Cell(cells, "number").Length == 0 && !IsNumber(filled[0]))
        {
            heading = filled[0];
        }
        else
        {
            AddInput(line, cells);
        }
    }

    private static bool IsNumber(string text) => text.All(char.IsAsciiDigit);

    private void AddInput(int line, List<string> cells)
    {
        var (number, what) = (columns!.Cell(cells, "number"), columns.Cell(cells, "what"));
        if (what.Length == 0 || ListHeaders.Plain(what) is "spare" or "empty" or "-" or "free" or "n/a")
        {
            return;
        }

        var numbers = number
            .Split(['/', '-', '+', '&', ',', '–', ' '], StringSplitOptions.RemoveEmptyEntries)
            .Select(part => int.TryParse(part.TrimEnd('.'), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : -1)
            .ToList();
        if (number.Length == 0)
        {
            numbers = [Inputs.Count == 0 ? 1 : Inputs[^1].First + Inputs[^1].Width];
        }

        if (numbers.Count is 0 or > 2 || numbers.Exists(value => value < 1) || (numbers.Count == 2 && numbers[1] != numbers[0] + 1))
        {
            questions.Add(
                line,
                null,
                $"'{what}' has the number '{number}', which is neither one channel nor two in a row",
                "Write 15, or 15/16 for left and right."
            );
            return;
        }

        if (numbers.Count == 1 && (what.Contains("L/R", StringComparison.OrdinalIgnoreCase) || what.Contains("stereo", StringComparison.OrdinalIgnoreCase)))
        {
            questions.Add(
                line,
                null,
                $"'{what}' is left and right, and has the one number {number}",
                "Give it two numbers, such as 15/16, or take the word for both sides away."
            );
            return;
        }

        Inputs.Add(
            new RiderInput(
                line,
                numbers[0],
                numbers.Count,
                what,
                columns.Cell(cells, "equipment"),
                columns.Cell(cells, "phantom"),
                columns.Cell(cells, "stand"),
                columns.Cell(cells, "position") is { Length: > 0 } place ? place : heading,
                columns.Cell(cells, "remarks")
            )
        );
    }

    private void AddMix(int line, List<string> cells)
    {
        var who = columns!.Cell(cells, "who");
        if (who.Length > 0)
        {
            Mixes.Add(new RiderMix(line, who, columns.Cell(cells, "system"), columns.Cell(cells, "position"), columns.Cell(cells, "remarks")));
        }
    }

    /// <summary>Two rows for the left and the right of one instrument are one line, where the left one has an odd number.</summary>
    private void JoinSides()
    {
        for (var i = 0; i + 1 < Inputs.Count; i++)
        {
            var (left, right) = (Inputs[i], Inputs[i + 1]);
            if (
                left is { Width: 1 }
                && right is { Width: 1 }
                && left.First % 2 == 1
                && right.First == left.First + 1
                && Stem(left.What, "L", "left") is { } stem
                && stem == Stem(right.What, "R", "right")
                && left.Equipment == right.Equipment
                && left.Phantom == right.Phantom
            )
            {
                Inputs[i] = left with { Width = 2, What = stem };
                Inputs.RemoveAt(i + 1);
            }
        }
    }

    private static string? Stem(string name, string letter, string word)
    {
        var last = name.LastIndexOf(' ');
        return last > 0 && (name[(last + 1)..] == letter || name[(last + 1)..].Equals(word, StringComparison.OrdinalIgnoreCase)) ? name[..last] : null;
    }
}
