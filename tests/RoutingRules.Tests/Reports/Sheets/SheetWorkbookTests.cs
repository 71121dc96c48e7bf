using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;
using RoutingRules.Reports.Sheets;
using RoutingRules.Workbook;
using Sheet = RoutingRules.Reports.Sheets.Contents.Sheet;

namespace RoutingRules.Tests.Reports.Sheets;

/// <summary>What another library makes of the workbook: Open XML SDK 3.3 with its validator.</summary>
public sealed class SheetWorkbookTests
{
    [Fact]
    public void Another_library_opens_it_and_finds_no_fault()
    {
        using var book = Open(Write(SheetShow.Build(SheetShow.Full)));

        Assert.Empty(new OpenXmlValidator().Validate(book).Select(fault => $"{fault.Path?.XPath}: {fault.Description}"));
    }

    [Fact]
    public void It_has_a_page_for_each_list_with_rows_and_one_to_read_first()
    {
        var sheet = SheetShow.Build(SheetShow.Full);
        using var book = Open(Write(sheet));

        Assert.Equal(
            ["Read first", .. SheetLists.All(sheet).Where(list => !list.Rows.IsEmpty).Select(list => list.Title)],
            book.WorkbookPart!.Workbook!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>().Select(page => page.Name!.Value!)
        );
        var first = Cells(book, "Read first");
        Assert.Contains(sheet.Head.Code, first);
        Assert.All(sheet.Cautions, caution => Assert.Contains(caution, first));
    }

    [Fact]
    public void Every_page_names_show_revision_and_code_and_holds_the_rows_of_its_list()
    {
        var sheet = SheetShow.Build(SheetShow.Full);
        using var book = Open(Write(sheet));

        foreach (var list in SheetLists.All(sheet).Where(list => !list.Rows.IsEmpty))
        {
            var cells = Cells(book, list.Title);
            Assert.Equal($"Harbour night \u00b7 revision C \u00b7 code {sheet.Head.Code}", cells[0]);
            Assert.Equal([.. list.Columns, .. list.Rows.SelectMany(row => row)], cells.Skip(1));
        }
    }

    [Fact]
    public void No_cell_is_a_formula_or_begins_like_one()
    {
        var full = SheetShow.Full;
        using var book = Open(Write(SheetShow.Build(full with { Title = "=1", Lines = [full.Lines[0] with { Name = "=cmd|x", Notes = "-1" }] })));

        Assert.All(book.WorkbookPart!.WorksheetParts, part => Assert.Empty(part.Worksheet!.Descendants<CellFormula>()));
        Assert.Contains("'=cmd|x", Cells(book, "Input list"));
        Assert.DoesNotContain(Cells(book, "Input list"), text => text.Length > 0 && "=+-@".Contains(text[0], StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_sheet_gives_the_same_bytes()
    {
        var first = Write(SheetShow.Build(SheetShow.Full));
        Thread.Sleep(2100); // an archive tells time in steps of two seconds

        Assert.Equal(first, Write(SheetShow.Build(SheetShow.Full)));
    }

    [Fact]
    public void A_text_longer_than_a_cell_may_hold_is_cut_with_an_ellipsis()
    {
        var full = SheetShow.Full;
        using var book = Open(Write(SheetShow.Build(full with { Lines = [full.Lines[0] with { Notes = new string('n', 40000) }] })));

        Assert.Contains(Cells(book, "Input list"), text => text.Length == SheetWorkbook.LongestText && text.EndsWith('\u2026'));
    }

    private static byte[] Write(Sheet sheet)
    {
        using var output = new MemoryStream();
        SheetWorkbook.Write(sheet, output);
        return output.ToArray();
    }

    private static SpreadsheetDocument Open(byte[] book) => SpreadsheetDocument.Open(new MemoryStream(book), false);

    private static string[] Cells(SpreadsheetDocument book, string name)
    {
        var page = book.WorkbookPart!.Workbook!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>().Single(page => page.Name == name);
        var part = (WorksheetPart)book.WorkbookPart.GetPartById(page.Id!);
        return [.. part.Worksheet!.Descendants<Cell>().Select(cell => cell.InnerText)];
    }
}
