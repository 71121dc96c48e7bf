using System.Text.Json;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

/// <summary>
/// Property names and values: OASIS, Static Analysis Results Interchange Format (SARIF) version 2.1.0; the sections stand beside the checks, from memory.
/// </summary>
public sealed class SarifReportTests
{
    private static JsonElement Run(params DocumentCheck[] documents)
    {
        var log = JsonDocument.Parse(ReportSamples.Write("sarif", documents)).RootElement;
        Assert.Equal("2.1.0", log.GetProperty("version").GetString());
        return Assert.Single(log.GetProperty("runs").EnumerateArray());
    }

    [Fact]
    public void Every_rule_of_the_catalogue_is_described_once_in_order()
    {
        // 3.49 reportingDescriptor.
        var rules = Run(ReportSamples.Clean).GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray().ToList();

        Assert.Equal(["T1", "T2", "T3", "T4", "T9"], rules.Select(rule => rule.GetProperty("id").GetString()));
        Assert.Equal("NeverRun", rules[4].GetProperty("name").GetString());
        Assert.Equal("Title of T9.", rules[4].GetProperty("shortDescription").GetProperty("text").GetString());
        Assert.Equal("note", rules[4].GetProperty("defaultConfiguration").GetProperty("level").GetString());
    }

    [Fact]
    public void A_result_names_rule_level_place_and_identity()
    {
        // 3.27 result; 3.29.4 region lines and columns count from 1; 3.33 logicalLocation.
        var result = Run(ReportSamples.Mixed).GetProperty("results")[2];

        Assert.Equal("T2", result.GetProperty("ruleId").GetString());
        Assert.Equal(1, result.GetProperty("ruleIndex").GetInt32());
        Assert.Equal("error", result.GetProperty("level").GetString());
        Assert.Equal("Third.", result.GetProperty("message").GetProperty("text").GetString());
        var location = Assert.Single(result.GetProperty("locations").EnumerateArray());
        Assert.Equal(
            """{"artifactLocation":{"uri":"b.show.json"},"region":{"startLine":7,"startColumn":9}}""",
            JsonSerializer.Serialize(location.GetProperty("physicalLocation"))
        );
        Assert.Equal("""[{"fullyQualifiedName":"box/out/5","kind":"output"}]""", JsonSerializer.Serialize(location.GetProperty("logicalLocations")));
        Assert.Equal(
            ReportSamples.Mixed.Result.Findings[2].Fingerprint(),
            result.GetProperty("partialFingerprints").GetProperty("routingRules/v1").GetString()
        );
        Assert.False(result.TryGetProperty("baselineState", out _));
        Assert.False(result.TryGetProperty("suppressions", out _));
        Assert.False(result.TryGetProperty("fixes", out _));
    }

    [Fact]
    public void A_finding_without_a_line_has_no_region() =>
        Assert.False(
            Run(ReportSamples.Mixed).GetProperty("results")[3].GetProperty("locations")[0].GetProperty("physicalLocation").TryGetProperty("region", out _)
        );

    [Fact]
    public void Waivers_are_suppressions_and_the_baseline_gives_every_result_a_state()
    {
        // 3.35 suppression; 3.27.24 baselineState.
        var results = Run(ReportSamples.Excused).GetProperty("results").EnumerateArray().ToList();

        Assert.Equal(["new", "new", "unchanged", "absent"], results.Select(result => result.GetProperty("baselineState").GetString()));
        var suppression = Assert.Single(results[1].GetProperty("suppressions").EnumerateArray());
        Assert.Equal("external", suppression.GetProperty("kind").GetString());
        Assert.Equal("accepted", suppression.GetProperty("status").GetString());
        Assert.Equal("Rented amp, back on Monday", suppression.GetProperty("justification").GetString());
        Assert.Single(results, result => result.TryGetProperty("suppressions", out _));
    }

    [Fact]
    public void What_could_not_be_decided_is_a_notification_of_the_tool()
    {
        // 3.20.21 toolExecutionNotifications; 3.58.3 associatedRule.
        var faulty = ReportSamples.Mixed.Result with
        {
            Undecided =
            [
                new UndecidedSubject
                {
                    Rule = "T3",
                    Subject = "feed x",
                    Reason = "It failed.",
                    IsFault = true,
                },
            ],
        };
        var invocation = Run(ReportSamples.Mixed, ReportSamples.Unreadable, ReportSamples.Mixed with { Result = faulty }).GetProperty("invocations")[0];
        var notes = invocation.GetProperty("toolExecutionNotifications").EnumerateArray().ToList();

        Assert.False(invocation.GetProperty("executionSuccessful").GetBoolean());
        Assert.Equal(["warning", "warning", "error"], notes.Select(note => note.GetProperty("level").GetString()));
        Assert.Equal("""{"id":"T3","index":2}""", JsonSerializer.Serialize(notes[0].GetProperty("associatedRule")));
        Assert.Equal("Not decided about feed mon: Its colour is not known.", notes[0].GetProperty("message").GetProperty("text").GetString());
        Assert.False(notes[1].TryGetProperty("associatedRule", out _));
        Assert.True(Run(ReportSamples.Mixed).GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
    }

    [Theory]
    [InlineData("shows/a b.show.json", "shows/a%20b.show.json")]
    [InlineData("/home/crew/ä.show.json", "file:///home/crew/%C3%A4.show.json")]
    [InlineData(@"c:\shows\a.json", "file:///c:/shows/a.json")]
    [InlineData("a:b#c%?.json", "a%3Ab%23c%25%3F.json")]
    public void Paths_become_uri_references(string path, string uri)
    {
        // RFC 3986, sections 2.1 and 4.2: other characters as percent codes of UTF-8, no colon in the first segment of a relative reference.
        var location = Run(ReportSamples.Mixed with { Path = path }).GetProperty("results")[0].GetProperty("locations")[0];

        Assert.Equal(uri, location.GetProperty("physicalLocation").GetProperty("artifactLocation").GetProperty("uri").GetString());
    }
}
