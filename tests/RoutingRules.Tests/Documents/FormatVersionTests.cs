using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

public sealed class FormatVersionTests
{
    [Fact]
    public void A_newer_version_is_the_only_finding_wherever_it_stands()
    {
        foreach (var text in new[] { """{"schemaVersion":2,"colour":1}""", """{"colour":1,"title":5,"schemaVersion":2,"more":[]}""" })
        {
            var finding = Sample.OneFinding(text);

            Assert.Equal(("RR1009", "/schemaVersion"), (finding.Rule, finding.Pointer));
            Assert.Equal("The document says format version 2, and this version of the library reads version 1 and older ones from 0.", finding.Message);
            Assert.Equal("Use a newer version of the library.", finding.Remedy);
            Assert.Equal(1, finding.Line);
        }
    }

    [Theory]
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
            read.Findings.Select(finding => finding.Message)
        );
        Assert.All(read.Findings, finding => Assert.Equal(("RR1010", Severity.Note), (finding.Rule, finding.Severity)));
    }

    [Fact]
    public void A_version_before_the_oldest_upgrader_is_not_supported()
    {
        var read = ShowReader.Read("""{"schemaVersion":-1,"name":"t","rig":{}}"""u8, [new Renames(0, "name", "title")]);

        Assert.Equal(
            "The document says format version -1, and this version of the library reads version 1 and older ones from 0.",
            Assert.Single(read.Findings).Message
        );
    }

    [Fact]
    public void An_upgrader_that_throws_is_named_and_the_document_refused()
    {
        var read = ShowReader.Read("""{"schemaVersion":-1,"name":"t","rig":{}}"""u8, [new Renames(-1, "rig", "rig"), new Faulty()]);

        Assert.False(read.IsUsable);
        var finding = Assert.Single(read.Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal(("RR1009", 1), (finding.Rule, finding.Line));
        Assert.Equal("The upgrader Faulty from format version 0 to 1 failed (InvalidOperationException: broken on purpose).", finding.Message);
    }

    [Fact]
    public void An_upgrader_that_does_not_get_on_is_named_and_never_asked_again()
    {
        var read = ShowReader.Read("""{"schemaVersion":0,"name":"t","rig":{}}"""u8, [new Idle()]);

        Assert.Equal("The upgrader Idle from format version 0 to 1 did not give a document of version 1.", Assert.Single(read.Findings).Message);
    }

    private sealed class Faulty : Upgrader
    {
        public override int From => 0;

        public override byte[] Upgrade(ReadOnlySpan<byte> utf8, ICollection<string> changes) => throw new InvalidOperationException("broken on purpose.");
    }

    private sealed class Idle : Upgrader
    {
        public override int From => 0;

        public override byte[] Upgrade(ReadOnlySpan<byte> utf8, ICollection<string> changes) => utf8.ToArray();
    }

    private static (string Rule, string Pointer) Of(Finding finding) => (finding.Rule, finding.Pointer);

    private sealed class Renames(int from, string old, string renamed) : Upgrader
    {
        public override int From => from;

        public override byte[] Upgrade(ReadOnlySpan<byte> utf8, ICollection<string> changes) =>
            Encoding.UTF8.GetBytes(
                Encoding
                    .UTF8.GetString(utf8)
                    .Replace($"\"{old}\"", $"\"{renamed}\"", StringComparison.Ordinal)
                    .Replace($"\"schemaVersion\":{from}", $"\"schemaVersion\":{from + 1}", StringComparison.Ordinal)
            );
    }
}
