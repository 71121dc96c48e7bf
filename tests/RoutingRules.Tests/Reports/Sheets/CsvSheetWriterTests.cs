using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents.Text;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class CsvSheetWriterTests
{
    [Theory]
    [InlineData(SheetListKind.Inputs)]
    [InlineData(SheetListKind.Outputs)]
    [InlineData(SheetListKind.Walk)]
    [InlineData(SheetListKind.Mixes)]
    [InlineData(SheetListKind.Packs)]
    [InlineData(SheetListKind.Streams)]
    [InlineData(SheetListKind.Links)]
    [InlineData(SheetListKind.Gaps)]
    [InlineData(SheetListKind.Changes)]
    [InlineData(SheetListKind.Kit)]
    [InlineData(SheetListKind.Power)]
    public void Another_reader_finds_the_rows_and_the_identity_of_the_sheet(SheetListKind kind)
    {
        var sheet = SheetShow.Build(SheetShow.Full);
        var list = SheetLists.Of(sheet, kind);
        var rows = Read(CsvSheetWriter.Write(sheet, kind));

        Assert.Equal([.. list.Columns, "Show", "Date", "Revision", "Code", "View", "Before you touch anything"], rows[0]);
        Assert.Equal(Math.Max(1, list.Rows.Count), rows.Count - 1);
        Assert.All(rows.Skip(1), row => Assert.Equal(["Harbour night", "2027-06-12", "C", sheet.Head.Code, "house view"], row[list.Columns.Count..^1]));
        Assert.All(sheet.Cautions, caution => Assert.Contains(caution, rows[1][^1], StringComparison.Ordinal));
    }

    // RFC 4180, section 2: rule 2 (line breaks are CR LF), 5 and 6 (fields with quotes, commas or line breaks in quotes), 7 (quotes doubled); from memory.
    [Fact]
    public void Fields_are_quoted_and_rows_ended_as_the_rfc_has_it()
    {
        var full = SheetShow.Full;
        var show = full with { Lines = [full.Lines[0] with { Name = "Kick, \"in\"", Notes = "one\ntwo" }] };
        var text = CsvSheetWriter.Write(SheetShow.Build(show), SheetListKind.Inputs);

        Assert.Contains(",\"Kick, \"\"in\"\"\",kick,", text, StringComparison.Ordinal);
        Assert.Equal(2, text.Split("\r\n").Length - 1);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_spreadsheet_would_calculate_is_neutralised_wherever_it_stands()
    {
        const string Bad = "=HYPERLINK(\"x\")";
        var full = SheetShow.Full;
        var show = full with
        {
            Title = Bad,
            Lines = [full.Lines[0] with { Name = Bad, Equipment = "+1", Stand = "-", Notes = "@x" }],
            Feeds = [full.Feeds[0] with { Name = Bad }],
        };
        var sheet = SheetShow.Build(show);
        var fields = Enum.GetValues<SheetListKind>().SelectMany(kind => Read(CsvSheetWriter.Write(sheet, kind))).SelectMany(row => row).ToArray();

        Assert.Contains("'" + Bad, fields);
        Assert.Contains("'+1", fields);
        Assert.DoesNotContain(fields, field => field.Length > 0 && "=+-@\t\r".Contains(field[0], StringComparison.Ordinal));
    }

    [Property(MaxTest = 60)]
    public Property Any_printable_text_comes_back_through_another_reader() =>
        Prop.ForAll(
            ArbMap.Default.ArbFor<string>().Filter(IsText),
            text =>
            {
                var full = SheetShow.Full;
                var sheet = SheetShow.Build(full with { Lines = [full.Lines[0] with { Name = text }] });
                var rows = Read(CsvSheetWriter.Write(sheet, SheetListKind.Inputs));
                Assert.Equal(text, FormulaGuard.Restore(rows[1][Array.IndexOf(rows[0], "Line")]));
            }
        );

    private static bool IsText(string? text) => !string.IsNullOrEmpty(text) && VisibleText.Of(text) == text;

    /// <summary>CsvHelper 33, in its strict mode of RFC 4180.</summary>
    private static List<string[]> Read(string csv)
    {
        using var parser = new CsvParser(
            new StringReader(csv),
            new CsvConfiguration(CultureInfo.InvariantCulture)
            {
                Mode = CsvMode.RFC4180,
                NewLine = "\r\n",
                IgnoreBlankLines = false,
            }
        );
        var rows = new List<string[]>();
        while (parser.Read())
        {
            rows.Add([.. parser.Record!]);
        }

        return rows;
    }
}
