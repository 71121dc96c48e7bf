using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

/// <summary>Old documents stay readable; version 0 is made up to hold the way open.</summary>
public sealed class DocumentUpgradeTests
{
    private static readonly RoutingEngine Bare = RoutingEngine.CreateBuilder().Build();

    private static byte[] Kept(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Documents", "Versions", name));

    private static UpgradeResult Run(string text, SchemaKind kind = SchemaKind.Show) => DocumentUpgrade.Run(kind, Encoding.UTF8.GetBytes(text));

    private static string Text(UpgradeResult result) => Encoding.UTF8.GetString(result.Utf8.Span);

    [Fact]
    public void A_kept_show_of_version_0_becomes_the_kept_show_of_version_1_byte_for_byte()
    {
        var result = DocumentUpgrade.Run(SchemaKind.Show, Kept("pier.v0.show.json"));

        Assert.True(result.IsUsable);
        Assert.Empty(result.Findings);
        Assert.Equal(Encoding.UTF8.GetString(Kept("pier.v1.show.json")), Text(result));
        var step = Assert.Single(result.Steps);
        Assert.Equal((0, 1), (step.From, step.To));
        Assert.Equal(
            [
                "/name is now title",
                "/rig/units is now devices",
                "/rig/units/*/type is now profile (2 times)",
                "/mixes is now feeds",
                "/mixes/*/bus is now source",
                "/mixes/*/protected is now priority",
                "/sources is now lines",
            ],
            step.Changes
        );
    }

    [Fact]
    public void A_show_of_version_0_reads_as_the_same_show_and_says_so()
    {
        var old = ShowReader.Read(Kept("pier.v0.show.json"));

        Assert.Equal(ShowReader.Read(Kept("pier.v1.show.json")).Value, old.Value);
        var note = Assert.Single(old.Findings);
        Assert.Equal(("RR1010", Severity.Note), (note.Rule, note.Severity));
        Assert.StartsWith(
            "The document was brought from format version 0 to 1 while reading. Changed: /name is now title; ",
            note.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void An_archived_show_that_holds_its_profiles_needs_no_plugin()
    {
        var text = Kept("pier.v1.show.json");
        var check = DocumentCheck.Run(Bare, "pier", text);
        var generic = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

        Assert.Empty(Bare.Profiles.Ids);
        Assert.Equal(DocumentStatus.Clean, check.Status);
        Assert.Equal(DocumentCheck.Run(generic, "pier", text).Result, check.Result);
        Assert.Equal("RR1010", Assert.Single(DocumentCheck.Run(Bare, "pier", Kept("pier.v0.show.json")).Result.Findings).Rule);
    }

    [Fact]
    public void The_show_needs_the_profiles_that_it_holds()
    {
        var show = ShowReader.Read(Kept("pier.v1.show.json")).Value!;

        Assert.Contains(Bare.Check(show with { Rig = show.Rig with { Profiles = default } }).Findings, finding => finding.Rule == "RR1105");
    }

    [Fact]
    public void Findings_of_an_upgraded_show_have_no_lines_that_would_mislead()
    {
        var text = Encoding.UTF8.GetString(Kept("pier.v0.show.json")).Replace("\"bus\": \"desk/aux/1\"", "\"bus\": \"desk/aux/77\"", StringComparison.Ordinal);
        var findings = DocumentCheck.Run(Bare, "pier", Encoding.UTF8.GetBytes(text)).Result.Findings;

        Assert.Contains(findings, finding => finding is { Rule: "RR1103", Pointer: "/feeds/0/source" });
        Assert.All(findings, finding => Assert.Equal((null, null), (finding.Line, finding.Column)));
        var wrong = ShowReader.Read(Encoding.UTF8.GetBytes(text.Replace("\"bus\"", "\"colour\"", StringComparison.Ordinal)));
        Assert.False(wrong.IsUsable);
        Assert.All(wrong.Findings, finding => Assert.Null(finding.Line));
    }

    [Theory]
    [InlineData("""{"schemaVersion":1,"title":"t","rig":{}}""")]
    [InlineData("\ufeff{ \"rig\" : {},\r\n \"title\":\"t\" , \"schemaVersion\":1}\r\n\r\n")]
    public void What_is_current_stays_byte_for_byte(string text)
    {
        var result = Run(text);

        Assert.True(result.IsUsable);
        Assert.Empty(result.Steps);
        Assert.Equal(text, Text(result));
    }

    [Fact]
    public void Layout_marks_and_escapes_stay_and_the_version_may_stand_last() =>
        Assert.Equal(
            "\ufeff{\r\n\t\"title\" :\"\\u0041\",\"rig\":{ \"devices\" : [ ] },\"schemaVersion\": 1 }\r\n",
            Text(Run("\ufeff{\r\n\t\"n\\u0061me\" :\"\\u0041\",\"rig\":{ \"units\" : [ ] },\"schemaVersion\": 0 }\r\n"))
        );

    [Fact]
    public void A_name_of_both_versions_is_told_and_nothing_is_dropped()
    {
        var result = Run("""{"schemaVersion":0,"name":"old","title":"new","rig":{}}""");

        Assert.False(result.IsUsable);
        Assert.Equal("RR1003", Assert.Single(result.Findings).Rule);
    }

    [Theory]
    [InlineData("""{"schemaVersion":2}""", "Use a newer version of the library.")]
    [InlineData("""{"schemaVersion":-3}""", "Use a newer version of the library, or write the document in the version that the message names.")]
    public void Versions_that_nothing_knows_are_refused_with_a_remedy(string text, string remedy)
    {
        foreach (var kind in DocumentUpgrade.Kinds)
        {
            var result = Run(text, kind);

            Assert.False(result.IsUsable);
            Assert.Equal(text, Text(result));
            Assert.Equal(("RR1009", remedy, (int?)1), (result.Findings[0].Rule, result.Findings[0].Remedy, result.Findings[0].Line));
        }
    }

    [Fact]
    public void Only_shows_have_older_versions()
    {
        Assert.Equal([SchemaKind.Show], DocumentUpgrade.Kinds.Where(kind => DocumentUpgrade.OldestOf(kind) < DocumentUpgrade.Version));
        Assert.All(
            DocumentUpgrade.Kinds.Where(kind => kind != SchemaKind.Show),
            kind => Assert.Equal("RR1009", Assert.Single(Run("""{"schemaVersion":0}""", kind).Findings).Rule)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Run("{}", SchemaKind.Report));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("""{"schemaVersion":0,"mixes":[{"bus":""")]
    [InlineData("""{"schemaVersion":0,"mixes":5,"rig":{"units":{"type":1}}}""")]
    [InlineData("[]")]
    public void Broken_texts_are_findings(string text)
    {
        var result = Run(text);

        Assert.False(result.IsUsable);
        Assert.NotEmpty(result.Findings);
    }
}
