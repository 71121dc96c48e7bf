using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Lists;

/// <summary>Reads a list of feeds or lines, as <see cref="ListExport"/> or a crew writes it, into a show.</summary>
/// <remarks>
/// A row is about the feed or line whose id it names, or, without an id, the one of exactly the same name; never the one at the same place. A new row
/// without an id gets one made from its name. A member changes only where its cell says something else than the show; one without a column, content of
/// other tools, the order and everything outside the list stay. What the list does not have stays as well, unless asked otherwise. A new feed or line
/// stands behind the one of the row before it. With any problem nothing is merged. Thread safe.
/// </remarks>
public static class ListImport
{
    private const int MaxColumns = 500;

    /// <summary>Reads a list. Never throws for what the list holds.</summary>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="utf8">The list, CSV after RFC 4180, UTF-8 with or without a byte order mark; the first row that is not blank holds the headers.</param>
    /// <param name="list">What it is a list of.</param>
    /// <param name="options">How it is read; null for the usual ways.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">The configuration names a member that there is not; one that was read cannot.</exception>
    public static ListImportResult Read(Show show, ReadOnlySpan<byte> utf8, IntentList list, ListImportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        options ??= new ListImportOptions();
        var problems = new ListProblems(options.MaxProblems);
        if (ListText.Decode(utf8, options.MaxBytes, problems) is { } text && Rows(text, list, options, problems) is { } rows)
        {
            ListIdentity.Settle(show, list, rows, problems);
            var merge = new ListMerge(show, list, problems);
            merge.Add(rows);
            if (problems.IsEmpty)
            {
                return merge.Result(options.RemovesAbsent);
            }
        }

        return new ListImportResult { Problems = problems.ToList() };
    }

    /// <summary>The rows with their cells by member; null when there is nothing to go by.</summary>
    private static List<ListRow>? Rows(string text, IntentList list, ListImportOptions options, ListProblems problems)
    {
        var config = list == IntentList.Feeds ? options.Config.Feeds : options.Config.Lines;
        var separator = options.Config.Separator is { } known ? CsvReader.Of(known) : CsvReader.Guess(text);
        var rows = CsvReader.Read(text, separator, problems);
        rows.RemoveAll(row => row.IsBlank);
        if (rows.Count == 0)
        {
            problems.Add(null, null, "the list is empty", "Write a first row with the headers of the columns, and a row for each entry.");
            return null;
        }

        if (rows.Count - 1 > options.MaxRows || rows[0].Cells.Count > MaxColumns)
        {
            problems.Add(
                null,
                null,
                FormattableString.Invariant(
                    $"the list has {rows.Count - 1} rows and {rows[0].Cells.Count} columns, more than {options.MaxRows} and {MaxColumns}"
                ),
                "Check that it is the right file."
            );
            return null;
        }

        var columns = Columns(rows, new ListHeaders(list, config, options.Ignore), list, problems);
        if (!Array.Exists(columns, column => column is { Name: "id" or "name" }))
        {
            problems.Add(
                rows[0].Line,
                null,
                $"no column says which {ListElements.Word(list)} a row is about",
                "Add a column id or name, or say in the configuration, under lists, which column it is; check the separator as well."
            );
            return null;
        }

        var found = new List<ListRow>();
        foreach (var row in rows.Skip(1))
        {
            if (row.Cells.Count != columns.Length)
            {
                var what = string.Create(
                    CultureInfo.InvariantCulture,
                    $"the row has {row.Cells.Count} {(row.Cells.Count == 1 ? "cell" : "cells")}, and there are {columns.Length} "
                        + $"{(columns.Length == 1 ? "header" : "headers")}"
                );
                problems.Add(row.Line, null, what, "Give each row a cell for each header; a cell that holds the separator stands in quotation marks.");
                continue;
            }

            var cells = columns.Zip(row.Cells, rows[0].Cells).Where(entry => entry.First is not null);
            found.Add(
                new ListRow(
                    row.Line,
                    [.. cells.Select(entry => new ListCell(entry.First!, entry.Third.Text.Trim(), FormulaGuard.Restore(entry.Second.Text), entry.Second.Line))],
                    config.Words
                )
            );
        }

        return found;
    }

    /// <summary>The member of each column; null where it is not read.</summary>
    private static ListMember?[] Columns(List<CsvRow> rows, ListHeaders headers, IntentList list, ListProblems problems)
    {
        var head = rows[0].Cells;
        var columns = new ListMember?[head.Count];
        for (var i = 0; i < columns.Length; i++)
        {
            var header = FormulaGuard.Restore(head[i].Text).Trim();
            if (header.Length == 0)
            {
                var column = i;
                if (rows.Find(row => row.Cells.Count > column && row.Cells[column].Text.Length > 0) is { } filled)
                {
                    problems.Add(
                        filled.Cells[column].Line,
                        null,
                        FormattableString.Invariant($"column {column + 1} has no header, and there is something in it"),
                        "Give it a header, or empty it."
                    );
                }
            }
            else if (!headers.TryFind(header, out var member))
            {
                var meant = headers.Nearest(header);
                problems.Add(
                    head[i].Line,
                    CellReader.Short(header),
                    $"no member of a {ListElements.Word(list)} has this name{(meant is null ? "" : $"; did you mean {meant}?")}",
                    "Correct the header, name it under ignore if it shall not be read, or say in the configuration, under lists, which member it is."
                );
            }
            else if (member is not null && Array.IndexOf(columns, member) is >= 0 and var first)
            {
                problems.Add(
                    head[i].Line,
                    CellReader.Short(header),
                    $"the column \"{CellReader.Short(head[first].Text.Trim())}\" is about {member.Name} as well",
                    "Keep one of the two, and name the other under ignore."
                );
            }
            else
            {
                columns[i] = member;
            }
        }

        return columns;
    }
}
