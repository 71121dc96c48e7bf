using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports;

/// <summary>Fixes in the reports that can hold them; a reader of the report can carry them out.</summary>
public sealed class FixesInReportsTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    /// <summary>
    /// A route to a slot that is not sent, a label with letters of several bytes, and an in-ear feed of which nobody says that it has a limiter.
    /// </summary>
    private static Show Faulty =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .With(Route("desk/aux/5", "desk/transmit/5"), Route("desk/aux/6-8", "desk/transmit/6-8")) with
        {
            Title = "Größe 🎻",
            Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/1", "desk/out/1")],
        };

    [Fact]
    public void The_json_report_holds_safe_fixes_as_patches_that_can_be_applied()
    {
        var text = ShowWriter.ToUtf8(Faulty);
        var finding = Findings(Report("json", text, true), "RR2008");
        var fix = finding.GetProperty("fixes")[0];

        Assert.Equal("safe", fix.GetProperty("safety").GetString());
        Assert.Equal("Take out the route to desk/transmit/5-8, which is not sent", fix.GetProperty("title").GetString());
        var patched = JsonPatch.Parse(Encoding.UTF8.GetBytes(fix.GetProperty("patch").GetRawText())).Apply(JsonNode.Parse(text));
        Assert.Equal(Faulty with { Patch = new() }, ShowReader.Read(Encoding.UTF8.GetBytes(patched!.ToJsonString())).Value);
    }

    [Fact]
    public void The_json_report_holds_choices_of_manual_fixes()
    {
        var fix = Findings(Report("json", ShowWriter.ToUtf8(Faulty), true), "RR9001").GetProperty("fixes")[0];
        Assert.Equal("manual", fix.GetProperty("safety").GetString());
        Assert.Equal(2, fix.GetProperty("choices").GetArrayLength());
        Assert.False(fix.TryGetProperty("patch", out _));
    }

    [Theory]
    [InlineData(false, "\n")]
    [InlineData(true, "\n")]
    [InlineData(false, "\r\n")]
    public void The_sarif_report_names_the_stretch_of_text_and_what_stands_there_instead(bool isMarked, string lineBreak)
    {
        var text = Encoding.UTF8.GetString(ShowWriter.ToUtf8(Faulty)).Replace("\n", lineBreak, StringComparison.Ordinal);
        byte[] bytes = [.. isMarked ? [0xEF, 0xBB, 0xBF] : Array.Empty<byte>(), .. Encoding.UTF8.GetBytes(text)];
        var results = JsonDocument.Parse(Report("sarif", bytes, true)).RootElement.GetProperty("runs")[0].GetProperty("results");
        var fix = results.EnumerateArray().Single(result => result.GetProperty("ruleId").GetString() == "RR2008").GetProperty("fixes")[0];
        var replacement = fix.GetProperty("artifactChanges")[0].GetProperty("replacements")[0];
        var region = replacement.GetProperty("deletedRegion");
        var start = Offset(text, lineBreak, region.GetProperty("startLine").GetInt32(), region.GetProperty("startColumn").GetInt32());
        var end = Offset(text, lineBreak, region.GetProperty("endLine").GetInt32(), region.GetProperty("endColumn").GetInt32());
        var mended = text[..start] + replacement.GetProperty("insertedContent").GetProperty("text").GetString() + text[end..];

        Assert.Equal(Faulty with { Patch = new() }, ShowReader.Read(Encoding.UTF8.GetBytes(mended)).Value);
        Assert.Equal("Take out the route to desk/transmit/5-8, which is not sent (safe)", fix.GetProperty("description").GetProperty("text").GetString());
    }

    [Fact]
    public void Unless_they_are_asked_for_there_are_none()
    {
        var text = ShowWriter.ToUtf8(Faulty);
        Assert.Equal(0, Findings(Report("json", text, false), "RR2008").GetProperty("fixes").GetArrayLength());
        Assert.DoesNotContain("artifactChanges", Encoding.UTF8.GetString(Report("sarif", text, false)), StringComparison.Ordinal);
    }

    private static int Offset(string text, string lineBreak, int line, int column)
    {
        var start = 0;
        for (var i = 1; i < line; i++)
        {
            start = text.IndexOf(lineBreak, start, StringComparison.Ordinal) + lineBreak.Length;
        }

        return start + column - 1;
    }

    private static JsonElement Findings(byte[] report, string rule) =>
        JsonDocument
            .Parse(report)
            .RootElement.GetProperty("documents")[0]
            .GetProperty("findings")
            .EnumerateArray()
            .Single(finding => finding.GetProperty("rule").GetString() == rule);

    private static byte[] Report(string format, byte[] text, bool withFixes)
    {
        var check = DocumentCheck.Run(Engine, "a.show.json", text);
        using var output = new MemoryStream();
        using (var report = ReportFormats.Find(format)!.Create(output, new ReportOptions { Rules = Engine.Catalogue }))
        {
            report.Add(withFixes ? check.WithFixes(Engine, text) : check);
            report.Finish();
        }

        return output.ToArray();
    }
}
