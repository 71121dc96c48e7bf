using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

/// <summary>Texts that are no readable JSON.</summary>
public sealed class UnreadableTests
{
    [Theory]
    [InlineData("")]
    [InlineData("  \r\n\t ")]
    public void An_empty_file_is_unreadable(string text) => Assert.Equal(("RR1001", "The file is empty."), Of(Sample.OneFinding(text)));

    [Fact]
    public void Only_a_byte_order_mark_is_an_empty_file() =>
        Assert.Equal("The file is empty.", Assert.Single(ShowReader.Read([0xEF, 0xBB, 0xBF]).Findings).Message);

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("utf-32")]
    [InlineData("utf-32BE")]
    public void Other_encodings_are_told_apart_with_and_without_a_mark(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        var plain = encoding.GetBytes(Sample.Show);

        foreach (var bytes in new[] { plain, [.. encoding.GetPreamble(), .. plain] })
        {
            var finding = Assert.Single(ShowReader.Read(bytes).Findings);
            Assert.Equal(("RR1001", "The file is UTF-16 or UTF-32 text, or no text at all."), Of(finding));
            Assert.Equal("Save the file as UTF-8.", finding.Remedy);
        }
    }

    [Fact]
    public void A_byte_that_is_not_utf_8_is_named_with_its_place()
    {
        byte[] bytes = [.. "{\n \"title\": \"caf"u8, 0xE9, .. "\"}"u8];

        var finding = Assert.Single(ShowReader.Read(bytes).Findings);

        Assert.Equal(("RR1001", "The file holds bytes that are not UTF-8."), Of(finding));
        Assert.Equal((2, 15), (finding.Line!.Value, finding.Column!.Value));
    }

    [Theory]
    [InlineData("[]", 1, 1, "The document is not an object; a show begins with a brace.")]
    [InlineData("17", 1, 1, "The document is not an object; a show begins with a brace.")]
    [InlineData("{\"title\":\"t\",}", 1, 14, "\"title\": a comma stands before the closing }; take it away.")]
    [InlineData("{\"rig\":{\"zones\":[{\"id\":\"a\"},]}}", 1, 29, "Rig, \"zones\" entry 1: a comma stands before the closing ]; take it away.")]
    [InlineData("{\n// remark\n}", 2, 1, "Comments are not allowed in JSON; put the remark into a \"notes\" member.")]
    [InlineData("{'title':1}", 1, 2, "Names and texts stand in double quotation marks, not in single ones.")]
    [InlineData("{\"title\":\"t\" \"rig\":{}}", 1, 14, "\"title\": a comma or a colon is missing before this.")]
    [InlineData("{\"title\":t}", 1, 10, "\"title\": a word stands without quotation marks; only true, false and null do.")]
    [InlineData(
        "{\"title\":\"a\tb\"}",
        1,
        12,
        "\"title\": a text holds a line break, a tab or another control character; write \\n or \\t, or close the quotation mark."
    )]
    [InlineData("{\"title\":\"a b\\q\"}", 1, 15, "\"title\": a backslash in a text begins no known escape; write \\\\ for the backslash itself.")]
    [InlineData("{\"title\":tru}", 1, 10, "\"title\": a word stands without quotation marks; only true, false and null do.")]
    [InlineData("{\"title\":01}", 1, 10, "\"title\": a number is written wrongly; write it like 48000, -3 or 0.5.")]
    [InlineData("{\"title\":.5}", 1, 10, "\"title\": '.' does not belong here.")]
    [InlineData("{\"title\":\"t\",,}", 1, 14, "\"title\": ',' does not belong here.")]
    [InlineData("{\"title\":1]", 1, 11, "\"title\": ] closes what is not open.")]
    [InlineData("{\"title\" \"t\"}", 1, 10, "A comma or a colon is missing before this.")]
    [InlineData("{\"title\":}", 1, 10, "\"title\": a value is missing after the colon.")]
    public void A_fault_is_named_with_line_and_column(string text, int line, int column, string message)
    {
        var read = Sample.Read(text);

        var finding = read.Findings[^1];
        Assert.Null(read.Value);
        Assert.Equal("RR1001", finding.Rule);
        Assert.Equal((line, column), (finding.Line!.Value, finding.Column!.Value));
        Assert.Equal(message, finding.Message);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("x")]
    [InlineData(" ,")]
    [InlineData("]")]
    public void Something_behind_the_document_is_a_fault(string more)
    {
        var finding = Sample.OneFinding(Minimal + more);

        Assert.Equal(("RR1001", "Something follows behind the end of the document; only one object may stand in a file."), Of(finding));
        Assert.Equal((1, Minimal.Length + 1 + more.Count(character => character == ' ')), (finding.Line!.Value, finding.Column!.Value));
    }

    [Fact]
    public void A_fault_does_not_hide_the_problems_before_it()
    {
        var read = Sample.Read("""{"schemaVersion":1,"title":5,"rig":{]""");

        Assert.Equal(["RR1005", "RR1001"], read.Findings.Select(finding => finding.Rule));
    }

    [Fact]
    public void A_show_cut_off_anywhere_is_unreadable_and_never_throws()
    {
        var bytes = Encoding.UTF8.GetBytes(Sample.Show);
        for (var length = 0; length < bytes.Length; length++)
        {
            var read = ShowReader.Read(bytes.AsSpan(0, length));

            Assert.Null(read.Value);
            Assert.Equal("RR1001", Assert.Single(read.Findings).Rule);
            Assert.NotNull(read.Findings[0].Line);
            Assert.Contains(length == 0 ? "is empty" : "ends before the document does", read.Findings[0].Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{\"a\":")]
    public void A_depth_bomb_is_refused(string opening)
    {
        var bomb = string.Concat(Enumerable.Repeat(opening, 100_000));

        Assert.Equal("RR1001", Sample.Read(bomb).Findings[^1].Rule);
        Assert.Contains("nested more than 32 deep", Sample.Read($$"""{"x":{{bomb}}""").Findings[^1].Message, StringComparison.Ordinal);
        Assert.Contains("nested more than 64 deep", Sample.Read($$"""{"extensions":{"x":{{bomb}}""").Findings[^1].Message, StringComparison.Ordinal);
        Assert.Contains("nested more than 32 deep", Sample.Read($$"""{"title":{{bomb}}""").Findings[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Extensions_may_be_64_deep_and_no_deeper()
    {
        static string Nested(int depth) =>
            $$"""{"schemaVersion":1,"title":"t","rig":{},"extensions":{"x":{{new string('[', depth - 1)}}{{new string(']', depth - 1)}} } }""";

        Sample.Good(Nested(64));
        Assert.Equal("RR1001", Sample.OneFinding(Nested(65)).Rule);
    }

    [Fact]
    public void Two_hundred_and_fifty_problems_give_two_hundred_findings_and_one_that_counts_the_rest()
    {
        var zones = string.Join(",", Enumerable.Repeat("7", 250));

        var read = Sample.Read(Sample.WithRig($$"""{"zones":[{{zones}}]}"""));

        Assert.Equal(201, read.Findings.Count);
        Assert.Equal("/rig/zones/199", read.Findings[199].Pointer);
        Assert.Equal(("RR1001", "50 more problems are not listed."), Of(read.Findings[200]));
    }

    [Fact]
    public void The_fault_that_ends_the_reading_is_listed_however_many_problems_came_before()
    {
        var read = Sample.Read("""{"schemaVersion":1,"title":7,"rig":{"zones":[7,8,9],""", new ReadLimits { Problems = 3 });

        Assert.Equal(["RR1005", "RR1005", "RR1005", "RR1001", "RR1001"], read.Findings.Select(finding => finding.Rule));
        Assert.StartsWith("Rig, \"zones\": the text ends before the document does", read.Findings[3].Message, StringComparison.Ordinal);
        Assert.Equal("1 more problem is not listed.", read.Findings[4].Message);
    }

    private const string Minimal = """{"schemaVersion":1,"title":"t","rig":{}}""";

    private static (string Rule, string Message) Of(Finding finding) => (finding.Rule, finding.Message);
}
