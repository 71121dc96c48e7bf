using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Plugins;
using RoutingRules.Rules;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class CheckCommandTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly TempFolder configs = new();

    public void Dispose()
    {
        folder.Dispose();
        configs.Dispose();
    }

    [Fact]
    public void A_sound_show_on_standard_input_is_read_as_such()
    {
        var result = Tool.Run(["check", "-"], Encoding.UTF8.GetBytes(Shows.Small)).Civil();

        Assert.NotEqual(2, result.Code);
        Assert.StartsWith("standard input: ", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("unreadable", result.Out, StringComparison.Ordinal);
        Assert.Equal("", result.Error);
    }

    [Fact]
    public void An_error_ends_with_1_and_names_file_line_column_and_remedy()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var result = Check([path], TestRule.Reports("TT1001", Severity.Error)).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains(
            $"    {path}:7:7: Device desk was looked at.\n    {path}:8:7: Device box was looked at.\n    What to do: Look at the test.\n",
            result.Out,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(Severity.Note, "warning", 0)]
    [InlineData(Severity.Warning, "warning", 1)]
    [InlineData(Severity.Warning, "error", 0)]
    [InlineData(Severity.Note, "note", 1)]
    public void The_threshold_decides_between_0_and_1(Severity severity, string failOn, int code)
    {
        var path = folder.Write(
            "a.show.json",
            """{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "x", "profile": "generic/amplifier-4" } ] } }"""
        );
        var config = folder.Write("config.json", QuietConfig.Text(failOn));

        Assert.Equal(code, Tool.Run(["check", path, "--config", config], [], default, TestRule.Reports("TT1001", severity)).Civil().Code);
    }

    [Fact]
    public void A_configuration_can_switch_a_rule_off_and_change_its_severity()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var off = folder.Write("off.json", QuietConfig.Text("warning", """{ "rule": "tt1001-name", "enabled": false }"""));
        var note = folder.Write("note.json", QuietConfig.Text("warning", """{ "rule": "TT1001", "severity": "note" }"""));
        var plugin = TestRule.Reports("TT1001", Severity.Error);

        var silent = Tool.Run(["check", path, "--config", off], [], default, plugin).Civil();
        Assert.Equal(0, silent.Code);
        Assert.DoesNotContain("was looked at", silent.Out, StringComparison.Ordinal);
        Assert.Matches("(?m)^Switched off: .*TT1001 tt1001-name", silent.Out);
        var noted = Tool.Run(["check", path, "--config", note], [], default, plugin).Civil();
        Assert.Equal(0, noted.Code);
        Assert.Contains("\nNotes\n\n  TT1001 tt1001-name: Test rule\n", noted.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_configuration_that_names_an_unknown_rule_is_wrong_usage()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var config = folder.Write("config.json", """{ "schemaVersion": 1, "rules": [ { "rule": "RR9999", "enabled": false } ] }""");
        var result = Tool.Run("check", path, "--config", config).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains("'RR9999'", result.Error, StringComparison.Ordinal);
        Assert.Contains("take the setting away", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_configuration_is_named_with_its_place()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var config = folder.Write("config.json", "{ \"schemaVersion\": 1,\n  \"failOn\": \"never\" }");
        var result = Tool.Run("check", path, "--config", config).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains($"{config}:2:13: ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_that_cannot_decide_ends_with_3_and_says_why()
    {
        var path = folder.Write("a.show.json", Clean);
        var result = Check([path], TestRule.CannotDecide("TT1001")).Civil();

        Assert.Equal(3, result.Code);
        Assert.Contains("TT1001, device x: Its colour is not known.", result.Out, StringComparison.Ordinal);
        Assert.Contains("1 undecided.", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_that_fails_is_undecided_and_the_others_go_on()
    {
        var path = folder.Write("a.show.json", Clean);
        var result = Check([path], TestRule.Fails("TT1001"), TestRule.Reports("TT1002", Severity.Note));

        Assert.Equal(3, result.Code);
        Assert.Contains("broken on purpose", result.Out, StringComparison.Ordinal);
        Assert.Contains("Device x was looked at.", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unreadable_document_wins_over_findings_and_findings_over_undecided()
    {
        var clean = folder.Write("a.show.json", Clean);
        var broken = folder.Write("b.show.json", "{");

        Assert.Equal(2, Check([clean, broken], TestRule.Reports("TT1001", Severity.Error)).Civil().Code);
        Assert.Equal(1, Check([clean], TestRule.Reports("TT1001", Severity.Error), TestRule.CannotDecide("TT1002")).Civil().Code);
    }

    [Fact]
    public void Json_output_meets_the_published_schema_whatever_happened()
    {
        var clean = folder.Write("a.show.json", Clean);
        var broken = folder.Write("b.show.json", "{ \"schemaVersion\": 1, \"title\": 3 }");
        var result = Check(
            [clean, broken, folder.At("missing.show.json"), "--format", "json"],
            TestRule.Reports("TT1001", Severity.Warning),
            TestRule.CannotDecide("TT1002"),
            TestRule.Fails("TT1003")
        );

        Assert.Equal(2, result.Code);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, result.OutBytes));
        var root = JsonDocument.Parse(result.OutBytes).RootElement;
        Assert.Equal(
            ["findings", "unreadable", "unreadable"],
            root.GetProperty("documents").EnumerateArray().Select(document => document.GetProperty("status").GetString())
        );
        Assert.Equal(3, root.GetProperty("summary").GetProperty("documents").GetInt32());
        Assert.Equal(1, root.GetProperty("summary").GetProperty("warnings").GetInt32());

        // Two of the sound show's rules, and one account for each document on which no rule was run.
        Assert.Equal(4, root.GetProperty("summary").GetProperty("undecided").GetInt32());
    }

    [Fact]
    public void Reports_go_to_files_beside_what_standard_output_says()
    {
        var path = folder.Write("a.show.json", Clean);
        var result = Tool.Run("check", path, "--report", $"json={folder.At("r.json")}", "--report", $"text={folder.At("r.txt")}").Civil();

        Assert.Equal(result.Out, File.ReadAllText(folder.At("r.txt")));
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, File.ReadAllBytes(folder.At("r.json"))));
        Assert.Equal(["a.show.json", "r.json", "r.txt"], folder.Names);
    }

    [Fact]
    public void Every_format_can_go_to_a_file_in_one_run()
    {
        var path = folder.Write("a.show.json", Clean);
        var formats = RoutingRules.Reports.FindingReports.ReportFormats.All.Select(format => format.Name).ToList();
        string[] options = [.. formats.SelectMany(format => new[] { "--report", $"{format}={folder.At("r." + format)}" })];
        var result = Check([path, .. options, "--format", "github"], TestRule.Reports("TT1001", Severity.Error)).Civil();

        Assert.Equal(1, result.Code);
        Assert.StartsWith($"::error file={path},line=1,col=", result.Out, StringComparison.Ordinal);
        Assert.Equal(result.Out, File.ReadAllText(folder.At("r.github")));
        Assert.All(formats, format => Assert.Contains("Device x was looked at.", File.ReadAllText(folder.At("r." + format)), StringComparison.Ordinal));
    }

    [Fact]
    public void Timings_go_to_standard_error_and_into_no_report()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var plain = Tool.Run("check", path, "--no-config");
        var timed = Tool.Run("check", path, "--no-config", "--timings").Civil();
        var rows = timed.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(plain.Out, timed.Out);
        Assert.Equal("", plain.Error);
        Assert.StartsWith("rule     subjects   work units", rows[0], StringComparison.Ordinal);
        Assert.Equal(
            RoutingEngine.CreateBuilder().Build().Rules.Select(rule => rule.Descriptor.Id),
            rows[1..^1].Select(row => row.Split(' ')[0]).Order(StringComparer.Ordinal)
        );
        Assert.Matches("^all +[0-9]+ +[0-9]+ +[0-9]+\\.[0-9]{3} 100\\.0%$", rows[^1]);
    }

    [Fact]
    public void Output_has_no_byte_order_mark_and_no_carriage_return()
    {
        var path = folder.Write("a.show.json", Clean.Replace("\"T\"", "\"Tannhäuser\"", StringComparison.Ordinal));
        foreach (var format in RoutingRules.Reports.FindingReports.ReportFormats.All.Select(format => format.Name))
        {
            var bytes = Check([path, "--format", format], TestRule.Reports("TT1001", Severity.Warning)).OutBytes;
            Assert.False(bytes.AsSpan().StartsWith("\uFEFF"u8));
            Assert.DoesNotContain((byte)'\r', bytes);
            Assert.Equal((byte)'\n', bytes[^1]);
        }
    }

    [Fact]
    public void Quiet_leaves_out_clean_documents_and_what_is_below_the_threshold()
    {
        var path = folder.Write("a.show.json", Clean);

        Assert.Equal("", Check([path, "--quiet"]).Civil().Out);
        var noted = Check([path, "--quiet"], TestRule.Reports("TT1001", Severity.Note)).Civil();
        Assert.Contains("not listed", noted.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("was looked at", noted.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_interrupted_check_writes_no_file()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        using var stop = new CancellationTokenSource();
        var result = Tool.Run(["check", path, path, "--report", $"json={folder.At("r.json")}"], [], stop.Token, TestRule.Interrupts("TT1001", stop)).Civil();

        Assert.Equal(3, result.Code);
        Assert.Contains("stopped on request", result.Error, StringComparison.Ordinal);
        Assert.Equal(["a.show.json"], folder.Names);
    }

    /// <summary>One amplifier and nothing else.</summary>
    private const string Clean = """{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "x", "profile": "generic/amplifier-4" } ] } }""";

    /// <summary>Runs <c>check</c> with the rules of the test and no others.</summary>
    private ToolResult Check(string[] arguments, params RoutingPlugin[] plugins)
    {
        var config = configs.Write("quiet.json", QuietConfig.Text());
        return Tool.Run(["check", .. arguments, "--config", config], [], default, plugins);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("markdown")]
    [InlineData("html")]
    public void What_people_read_names_the_label_and_the_panel(string format)
    {
        var show = Shows
            .Small.Replace("\"id\": \"box\",", "\"id\": \"box\", \"label\": \"Riser box\",", StringComparison.Ordinal)
            .Replace("\"desk/transmit/1\" }", "\"desk/transmit/2\" }", StringComparison.Ordinal);

        string Out(params string[] more) => Tool.Run(["check", "-", "--format", format, .. more], System.Text.Encoding.UTF8.GetBytes(show)).Civil().Out;

        Assert.Contains("Riser box output 2 (box/out/2)", Out(), StringComparison.Ordinal);
        Assert.DoesNotContain("box/out/2", Out("--names", "panel"), StringComparison.Ordinal);
        Assert.DoesNotContain("Riser box output 2", Out("--names", "ids"), StringComparison.Ordinal);
    }
}
