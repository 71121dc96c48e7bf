using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

public sealed class TextLocatorTests
{
    // Columns counted by hand: U+1F3A4 is two UTF-16 units, so that "b" begins in column 13 of line 2.
    private const string Text = "{ \"a\": 1,\r\n  \"🎤\": [ 5,\r    { \"x/y\": {} } ],\n\n\"é~\": \"end\" }";

    [Theory]
    [InlineData("", 1, 1)]
    [InlineData("/a", 1, 8)]
    [InlineData("/🎤", 2, 9)]
    [InlineData("/🎤/0", 2, 11)]
    [InlineData("/🎤/1", 3, 5)]
    [InlineData("/🎤/1/x~1y", 3, 14)]
    [InlineData("/é~0", 5, 7)]
    public void A_value_is_found_by_its_pointer(string pointer, int line, int column) => Assert.Equal(new TextPosition(line, column), Find(Text, pointer));

    [Theory]
    [InlineData("/b", 1, 1)]
    [InlineData("/🎤/7", 2, 9)]
    [InlineData("/🎤/01", 2, 9)]
    [InlineData("/🎤/1/z/0", 3, 5)]
    [InlineData("/a/b/c", 1, 8)]
    public void What_is_missing_is_placed_at_its_nearest_ancestor(string pointer, int line, int column) =>
        Assert.Equal(new TextPosition(line, column), Find(Text, pointer));

    [Fact]
    public void Of_two_members_of_one_name_the_first_is_found() => Assert.Equal(new TextPosition(1, 6), Find("""{"a":1,"a":2}""", "/a"));

    [Fact]
    public void A_byte_order_mark_takes_no_column() => Assert.Equal(new TextPosition(1, 6), Find("\uFEFF{\"a\":1}", "/a"));

    [Theory]
    [InlineData("")]
    [InlineData("nonsense")]
    public void In_a_text_that_is_no_json_nothing_is_found(string text) => Assert.Null(Find(text, "/a"));

    [Fact]
    public void A_fault_behind_the_value_does_not_matter() => Assert.Equal(new TextPosition(1, 6), Find("""{"a":1,]""", "/a"));

    [Theory]
    [InlineData("""{"":1}""", "/", 1, 5)]
    [InlineData("""{" ":1}""", "/ ", 1, 6)]
    [InlineData("""{"m~n":8}""", "/m~0n", 1, 8)]
    [InlineData("""{"a/b":1}""", "/a~1b", 1, 8)]
    [InlineData("""{"foo":["bar","baz"]}""", "/foo/0", 1, 9)]
    [InlineData("""{"k\"l":6}""", "/k\"l", 1, 9)]
    [InlineData("""{"~1":6}""", "/~01", 1, 7)]
    public void The_pointers_of_RFC_6901_section_5_are_understood(string text, string pointer, int line, int column) =>
        Assert.Equal(new TextPosition(line, column), Find(text, pointer));

    [Fact]
    public void Findings_get_their_places_in_one_pass_and_keep_their_order()
    {
        ValueList<Finding> findings = [At("/é~0"), At("/a"), At("/🎤/1"), At("/a") with { Line = 9, Column = 9 }, At("/none")];

        var located = findings.Locate(Encoding.UTF8.GetBytes(Text));

        Assert.Equal([(5, 7), (1, 8), (3, 5), (9, 9), (1, 1)], located.Select(finding => (finding.Line!.Value, finding.Column!.Value)));
        Assert.Equal(findings.Select(finding => finding.Pointer), located.Select(finding => finding.Pointer));
    }

    [Fact]
    public void Findings_about_a_text_that_is_no_json_stay_as_they_are()
    {
        ValueList<Finding> findings = [At("/a")];

        Assert.Equal(findings, findings.Locate("]"u8));
    }

    [Fact]
    public void The_place_the_reader_gives_is_the_one_the_pointer_leads_to()
    {
        var text = Sample.Show.Replace("\"desk/main/1\"", "\"desk/main\"", StringComparison.Ordinal).Replace("70.5", "-70.5", StringComparison.Ordinal);

        var findings = Sample.Read(text).Findings;

        Assert.Equal(2, findings.Count);
        Assert.All(findings, finding => Assert.Equal(Find(text, finding.Pointer), new TextPosition(finding.Line!.Value, finding.Column!.Value)));
    }

    private static TextPosition? Find(string text, string pointer) => TextLocator.Find(Encoding.UTF8.GetBytes(text), pointer);

    private static Finding At(string pointer) =>
        new()
        {
            Rule = "X1",
            Name = "x",
            Severity = Severity.Note,
            Message = "m",
            Pointer = pointer,
        };
}
