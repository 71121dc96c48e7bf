using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Plugins;
using RoutingRules.Rules;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>check</c> with waivers and baselines.</summary>
public sealed class WaiverCommandTests : IDisposable
{
    private const string Show =
        """{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "x", "profile": "generic/amplifier-4" }, { "id": "y","""
        + """ "profile": "generic/amplifier-4" } ] } }""";

    private static readonly RoutingPlugin Plugin = TestRule.Reports("TT1001", Severity.Error);

    private readonly TempFolder folder = new();

    public WaiverCommandTests()
    {
        folder.Write("quiet.json", QuietConfig.Text());
        folder.Write("shows/a.show.json", Show);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_waived_finding_does_not_fail_and_the_others_still_do()
    {
        var waivers = Waivers(Waiver("x"));
        var one = Check("--waivers", waivers, "--as-of", "2027-06-12").Civil();

        Assert.Equal(1, one.Code);
        Assert.Contains("Waived by Mira until 2027-06-30: for the test\n", one.Out, StringComparison.Ordinal);
        Assert.Contains($"{waivers}: clean. 2 rules passed", one.Out, StringComparison.Ordinal);

        Assert.Equal(0, Check("--waivers", Waivers(Waiver("x"), Waiver("y")), "--as-of", "2027-06-30").Civil().Code);
    }

    [Fact]
    public void An_expired_waiver_stops_excusing_and_is_a_finding_of_its_own()
    {
        var waivers = Waivers(Waiver("x"), Waiver("y"));
        var result = Check("--waivers", waivers, "--as-of", "2027-07-01", "--format", "json").Civil();
        var documents = JsonDocument.Parse(result.OutBytes).RootElement.GetProperty("documents");

        Assert.Equal(1, result.Code);
        Assert.Equal(2, documents[0].GetProperty("findings").GetArrayLength());
        Assert.Equal(["RR1011", "RR1011"], documents[1].GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("rule").GetString()));
        Assert.Equal(2, documents[1].GetProperty("findings")[0].GetProperty("line").GetInt32());
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, result.OutBytes));
    }

    [Fact]
    public void Without_a_day_it_is_today_where_the_tool_runs()
    {
        var waivers = Waivers(Waiver("x"), Waiver("y"));
        int Code(DateOnly today)
        {
            using var output = new MemoryStream();
            using var error = new StringWriter();
            return CliRunner.Run(
                ["check", folder.At("shows"), "--config", folder.At("quiet.json"), "--waivers", waivers],
                new CliConsole(Stream.Null, output, error) { Plugins = [Plugin], Today = () => today }
            );
        }

        Assert.Equal(0, Code(new DateOnly(2027, 6, 30)));
        Assert.Equal(1, Code(new DateOnly(2027, 7, 1)));
    }

    [Fact]
    public void A_scope_is_relative_to_the_file_of_the_waivers()
    {
        Assert.Equal(0, Check("--waivers", Waivers(Waiver("x", "shows/*"), Waiver("y", "**/a.show.json")), "--as-of", "2027-06-12").Civil().Code);
        var elsewhere = Check("--waivers", Waivers(Waiver("x", "a.show.json"), Waiver("y", "shows/*")), "--as-of", "2027-06-12").Civil();

        Assert.Equal(1, elsewhere.Code);
        Assert.DoesNotContain("RR1012", elsewhere.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_that_fits_nothing_is_a_finding()
    {
        var result = Check("--waivers", Waivers(Waiver("x"), Waiver("y"), Waiver("z")), "--as-of", "2027-06-12").Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("RR1012 waiver-stale", result.Out, StringComparison.Ordinal);
        Assert.Contains("(device z) by Mira fits no finding of the documents it covers.", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{", ":1:", "The text ends before the document does")]
    [InlineData(
        """{ "schemaVersion": 1, "waivers": [ { "rule": "TT1001", "entities": [ { "role": "device", "id": "x" } ], "owner": "o","""
            + """ "expires": "2027-06-30", "scope": [ "**" ] } ] }""",
        ":1:36: ",
        "reason"
    )]
    [InlineData(
        """{ "schemaVersion": 1, "waivers": [ { "rule": "TT9", "fingerprint": "0123456789abcdef", "reason": "r", "owner": "o","""
            + """ "expires": "2027-06-30", "scope": [ "**" ] } ] }""",
        ":1:46: ",
        "There is no rule 'TT9'"
    )]
    [InlineData(
        """{ "schemaVersion": 1, "waivers": [ { "rule": "RR1005", "fingerprint": "0123456789abcdef", "reason": "r", "owner": "o","""
            + """ "expires": "2027-06-30", "scope": [ "**" ] } ] }""",
        ":1:46: ",
        "cannot be waived"
    )]
    [InlineData(
        """{ "schemaVersion": 1, "waivers": [ { "rule": "TT1001", "fingerprint": "0123456789abcdef", "reason": "r", "owner": "o","""
            + """ "expires": "2027-02-30", "scope": [ "**" ] } ] }""",
        ":1:",
        "no day of the calendar"
    )]
    public void Malformed_waivers_stop_the_run_with_their_place_and_write_nothing(string text, string place, string expected)
    {
        var path = folder.Write("bad.json", text);
        var result = Check("--waivers", path, "--report", $"json={folder.At("r.json")}").Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains($"the waivers cannot be used.\n{path}{place}", result.Error, StringComparison.Ordinal);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.At("r.json")));
    }

    [Fact]
    public void A_baseline_is_begun_with_force_only()
    {
        var path = folder.At("baseline.json");
        foreach (var options in new string[][] { [], ["--update-baseline"] })
        {
            var refused = Check(["--baseline", path, .. options]).Civil();
            Assert.Equal((2, ""), (refused.Code, refused.Out));
            Assert.Contains("--update-baseline --force", refused.Error, StringComparison.Ordinal);
            Assert.False(File.Exists(path));
        }

        Assert.Equal(0, Check("--baseline", path, "--update-baseline", "--force").Civil().Code);
        Assert.Equal(
            """
            {
              "schemaVersion": 1,
              "documents": [
                {
                  "path": "shows/a.show.json",
                  "findings": [
                    {
                      "rule": "TT1001",

            """,
            File.ReadAllText(path)[..File.ReadAllText(path).IndexOf("          \"fingerprint\"", StringComparison.Ordinal)]
        );
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Baseline, File.ReadAllBytes(path)));
        var known = Check("--baseline", path).Civil();
        Assert.Equal(0, known.Code);
        Assert.Contains("clean; 2 known", known.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_finding_fails_and_an_update_only_shrinks()
    {
        var path = folder.At("baseline.json");
        Check("--baseline", path, "--update-baseline", "--force").Civil();
        folder.Write("shows/a.show.json", Show.Replace("\"id\": \"x\"", "\"id\": \"z\"", StringComparison.Ordinal));
        var before = File.ReadAllText(path);
        var result = Check("--baseline", path).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("Baseline: 1 known finding not counted, 1 no longer found.", result.Out, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(path));

        Assert.Equal(1, Check("--baseline", path, "--update-baseline").Civil().Code);
        var after = BaselineReader.Read(File.ReadAllBytes(path)).Value!;
        Assert.Equal(["y"], Assert.Single(after.Documents).Findings.Select(finding => finding.Entities[0].Id));
    }

    [Fact]
    public void An_update_that_changes_nothing_does_not_touch_the_file()
    {
        var path = folder.At("baseline.json");
        Check("--baseline", path, "--update-baseline", "--force").Civil();
        var then = new DateTime(2001, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        File.SetLastWriteTimeUtc(path, then);
        Check("--baseline", path, "--update-baseline").Civil();

        Assert.Equal(then, File.GetLastWriteTimeUtc(path));
        Assert.DoesNotContain(folder.Names, name => name.Contains(".part-", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[ 1 ]", ":1:")]
    [InlineData("""{ "schemaVersion": 1, "documents": [ { "path": "a", "findings": [] } ] }""", ":1:65: ")]
    [InlineData("""{ "schemaVersion": 1, "documents": [ { "path": "a", "findings": [ { "rule": "R", "fingerprint": "x" } ] } ] }""", ":1:97: ")]
    [InlineData(
        """{ "schemaVersion": 1, "documents": [ { "path": "a", "findings": [ { "rule": "R", "fingerprint": "0123456789abcdef" }, { "rule": "R","""
            + """ "fingerprint": "0123456789abcdef" } ] } ] }""",
        ":1:119: "
    )]
    public void A_malformed_baseline_stops_the_run_even_with_force_and_stays_as_it_is(string text, string place)
    {
        var path = folder.Write("baseline.json", text);
        var result = Check("--baseline", path, "--update-baseline", "--force").Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains($"the baseline cannot be used.\n{path}{place}", result.Error, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(path));
    }

    [Theory]
    [InlineData("--update-baseline", "add --baseline FILE")]
    [InlineData("--force", "give both, or neither")]
    [InlineData("--as-of 12.6.2027", "year-month-day")]
    [InlineData("--waivers -", "name a file")]
    [InlineData("--waivers nowhere.json", "no such file")]
    public void Options_that_do_not_fit_together_are_wrong_usage(string options, string expected)
    {
        var result = Check(options.Split(' ')).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void No_report_takes_the_place_of_waivers_baseline_or_configuration()
    {
        var waivers = Waivers(Waiver("x"));
        var baseline = folder.At("baseline.json");
        Check("--baseline", baseline, "--update-baseline", "--force").Civil();
        foreach (var path in new[] { waivers, baseline, folder.At("quiet.json"), folder.At("shows/a.show.json") })
        {
            var before = File.ReadAllText(path);
            var result = Check("--waivers", waivers, "--baseline", baseline, "--report", $"text={path}").Civil();

            Assert.Equal(2, result.Code);
            Assert.Equal(before, File.ReadAllText(path));
        }

        Assert.Equal(2, Check("--baseline", baseline, "--update-baseline", "--report", $"text={baseline}").Civil().Code);
        Assert.Equal(2, Check("--baseline", folder.At("shows/a.show.json"), "--update-baseline", "--force").Civil().Code);
    }

    [Fact]
    public void An_interrupted_run_leaves_the_baseline_alone()
    {
        var path = folder.At("baseline.json");
        using var stop = new CancellationTokenSource();
        var result = Tool.Run(
                ["check", folder.At("shows"), folder.At("shows"), "--config", folder.At("quiet.json"), "--baseline", path, "--update-baseline", "--force"],
                [],
                stop.Token,
                TestRule.Interrupts("TT1001", stop)
            )
            .Civil();

        Assert.Equal(3, result.Code);
        Assert.Equal(["quiet.json", "shows", "shows/a.show.json"], folder.Names);
    }

    private static string Waiver(string device, string scope = "**") =>
        $$"""{ "rule": "tt1001-name", "entities": [ { "role": "device", "id": "{{device}}" } ], "reason": "for the test", "owner": "Mira","""
        + $$""" "expires": "2027-06-30", "scope": [ "{{scope}}" ] }""";

    private string Waivers(params string[] waivers) =>
        folder.Write("waivers.json", $"{{ \"schemaVersion\": 1, \"waivers\": [\n{string.Join(",\n", waivers)} ] }}");

    private ToolResult Check(params string[] options) =>
        Tool.Run(["check", folder.At("shows"), "--config", folder.At("quiet.json"), .. options], [], default, Plugin);
}
