using System.Text;
using RoutingRules.Reading;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reading;

public sealed class FormatVersionTests
{
    [Fact]
    public void A_newer_version_is_the_only_finding_wherever_it_stands()
    {
        foreach (var text in new[] { """{"schemaVersion":2,"colour":1}""", """{"colour":1,"title":5,"schemaVersion":2,"more":[]}""" })
        {
            var finding = Sample.OneFinding(text);

            Assert.Equal(("RR1009", "/schemaVersion"), (finding.Rule, finding.Pointer));
            Assert.Equal("The document says format version 2, and this version of the library reads version 1.", finding.Message);
            Assert.Equal("Use a newer version of the library.", finding.Remedy);
            Assert.Equal(1, finding.Line);
        }
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("9007199254740993")]
    public void A_version_that_never_was_is_not_supported(string version) =>
        Assert.Equal("RR1009", Sample.OneFinding($$"""{"schemaVersion":{{version}},"title":"t","rig":{} }""").Rule);

    [Theory]
    [InlineData("\"1\"", "RR1005")]
    [InlineData("1.5", "RR1005")]
    [InlineData("null", "RR1005")]
    public void A_version_is_a_whole_number(string version, string rule)
    {
        var read = Sample.Read($$"""{"schemaVersion":{{version}},"title":"t","rig":{} }""");

        Assert.Null(read.Value);
        Assert.Equal(rule, Assert.Single(read.Findings).Rule);
    }

    [Fact]
    public void Without_a_version_there_is_no_show() => Assert.Equal(("RR1004", "/schemaVersion"), Of(Sample.OneFinding("""{"title":"t","rig":{}}""")));

    [Fact]
    public void An_older_document_goes_through_its_upgraders_and_says_so()
    {
        var read = ShowReader.Read("""{"schemaVersion":-1,"name":"t","rig":{}}"""u8, [new Renames(-1, "rig", "rig"), new Renames(0, "name", "title")]);

        Assert.True(read.IsUsable);
        Assert.Equal("t", read.Value!.Title);
        Assert.Equal(1, read.Value.SchemaVersion);
        Assert.Equal(
            ["The document was brought from format version -1 to 0 while reading.", "The document was brought from format version 0 to 1 while reading."],
            read.Findings.Select(finding => finding.Message));
        Assert.All(read.Findings, finding => Assert.Equal(("RR1010", Severity.Note), (finding.Rule, finding.Severity)));
    }

    [Fact]
    public void A_version_before_the_oldest_upgrader_is_not_supported()
    {
        var read = ShowReader.Read("""{"schemaVersion":-1,"name":"t","rig":{}}"""u8, [new Renames(0, "name", "title")]);

        Assert.Equal(
            "The document says format version -1, and this version of the library reads version 1 and older ones from 0.", Assert.Single(read.Findings).Message);
    }

    private static (string Rule, string Pointer) Of(Finding finding) => (finding.Rule, finding.Pointer);

    private sealed class Renames(int from, string old, string renamed) : Upgrader
    {
        public override int From => from;

        public override byte[] Upgrade(ReadOnlySpan<byte> utf8) => Encoding.UTF8.GetBytes(
            Encoding.UTF8.GetString(utf8)
                .Replace($"\"{old}\"", $"\"{renamed}\"", StringComparison.Ordinal)
                .Replace($"\"schemaVersion\":{from}", $"\"schemaVersion\":{from + 1}", StringComparison.Ordinal));
    }
}
