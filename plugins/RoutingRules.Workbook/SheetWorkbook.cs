using System.IO.Compression;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace RoutingRules.Workbook;

/// <summary>Writes the lists of a sheet as a workbook (Office Open XML, <c>.xlsx</c>).</summary>
/// <remarks>
/// The first page says which show, date, revision, code and view it is, and carries the cautions; then one page for each list that has rows. Heads stay in
/// sight and can be filtered. Every cell is text; what a spreadsheet could take for a formula is neutralised by <see cref="FormulaGuard"/>. The same sheet
/// gives the same bytes. Thread safe.
/// </remarks>
public static class SheetWorkbook
{
    /// <summary>The longest text a cell may hold, as Office Open XML readers have it; longer ones are cut and end with an ellipsis.</summary>
    public const int LongestText = 32767;

    private const double WidestColumn = 46;
    private const double NarrowestColumn = 7;

    // The earliest date a ZIP archive can name: nothing in the file tells when it was made.
    private static readonly DateTimeOffset Made = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes a workbook.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="output">Where to write; it stays open and need not be seekable.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(Sheet sheet, Stream output)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(output);
        using var made = new MemoryStream();
        MakeAsync(sheet, made).GetAwaiter().GetResult();
        made.Position = 0;
        using var whole = new MemoryStream();
        Repack(made, whole);
        whole.Position = 0;
        whole.CopyTo(output);
    }

    private static async Task MakeAsync(Sheet sheet, Stream output)
    {
        var book = await Spreadsheet.CreateNewAsync(output, new SpreadCheetahOptions { DocumentProperties = null }).ConfigureAwait(false);
        await using (book.ConfigureAwait(false))
        {
            var big = book.AddStyle(new Style { Font = { Bold = true, Size = 28 } });
            var bold = book.AddStyle(new Style { Font = { Bold = true }, Alignment = { WrapText = true, Vertical = VerticalAlignment.Top } });
            var plain = book.AddStyle(new Style { Alignment = { WrapText = true, Vertical = VerticalAlignment.Top } });
            await AddFirstAsync(book, sheet, big, plain).ConfigureAwait(false);
            foreach (var list in SheetLists.All(sheet).Where(list => !list.Rows.IsEmpty))
            {
                await AddListAsync(book, sheet, list, bold, plain).ConfigureAwait(false);
            }

            await book.FinishAsync().ConfigureAwait(false);
        }
    }

    private static async Task AddFirstAsync(Spreadsheet book, Sheet sheet, StyleId big, StyleId plain)
    {
        var options = new WorksheetOptions();
        options.Column(1).Width = 100;
        await book.StartWorksheetAsync("Read first", options).ConfigureAwait(false);
        await book.AddRowAsync([new StyledCell(Line(sheet.Head.Title), big)]).ConfigureAwait(false);
        await book.AddRowAsync([new StyledCell(sheet.Head.Code, big)]).ConfigureAwait(false);
        string[] lines =
        [
            .. SheetIdentity(sheet.Head),
            "A cell that would begin like a formula begins with an apostrophe.",
            "Before you touch anything:",
            .. sheet.Cautions,
        ];
        foreach (var line in lines)
        {
            await book.AddRowAsync([new StyledCell(Line(line), plain)]).ConfigureAwait(false);
        }
    }

    private static IEnumerable<string> SheetIdentity(SheetHead head)
    {
        if (head.Venue is not null)
        {
            yield return head.Venue;
        }

        yield return head.Date is { } date ? date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : "no date";
        yield return head.Revision is null ? "no revision" : $"revision {head.Revision}";
        yield return head.View == SheetView.House ? "Sides as the audience sees them (house)." : "Sides as the performers see them (stage).";
        if (head.Since is { } since)
        {
            yield return $"Changes are against {(since.Revision is null ? "the sheet without revision" : $"revision {since.Revision}")}, code {since.Code}.";
        }
    }

    private static async Task AddListAsync(Spreadsheet book, Sheet sheet, SheetList list, StyleId bold, StyleId plain)
    {
        var options = new WorksheetOptions { FrozenRows = 2 };
        for (var i = 0; i < list.Columns.Count; i++)
        {
            var longest = list.Rows.Select(row => row[i].Length).Append(list.Columns[i].Length).Max();
            options.Column(i + 1).Width = Math.Clamp(longest + 2, NarrowestColumn, WidestColumn);
        }

        await book.StartWorksheetAsync(list.Title, options).ConfigureAwait(false);
        var head =
            $"{sheet.Head.Title} \u00b7 {(sheet.Head.Revision is null ? "no revision" : $"revision {sheet.Head.Revision}")} \u00b7 code {sheet.Head.Code}";
        await book.AddRowAsync([new DataCell(Line(head))]).ConfigureAwait(false);
        await book.AddRowAsync(Row(list.Columns, bold)).ConfigureAwait(false);
        for (var i = 0; i < list.Rows.Count; i++)
        {
            await book.AddRowAsync(Row(list.Rows[i], plain)).ConfigureAwait(false);
        }
    }

    private static StyledCell[] Row(ValueList<string> texts, StyleId style) => [.. texts.Select(text => new StyledCell(Safe(text), style))];

    /// <summary>A text that no list has made harmless.</summary>
    private static string Line(string text) => Safe(PlainText.Show(text));

    private static string Safe(string text)
    {
        var safe = FormulaGuard.Neutralise(text);
        if (safe.Length <= LongestText)
        {
            return safe;
        }

        var cut = LongestText - 1;
        return string.Concat(safe.AsSpan(0, char.IsHighSurrogate(safe[cut - 1]) ? cut - 1 : cut), "\u2026");
    }

    /// <summary>The same archive without the time of its making.</summary>
    private static void Repack(Stream from, Stream to)
    {
        using var source = new ZipArchive(from, ZipArchiveMode.Read, leaveOpen: true);
        using var target = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var part in source.Entries)
        {
            var entry = target.CreateEntry(part.FullName, CompressionLevel.Optimal);
            entry.LastWriteTime = Made;
            using var content = part.Open();
            using var copy = entry.Open();
            content.CopyTo(copy);
        }
    }
}
