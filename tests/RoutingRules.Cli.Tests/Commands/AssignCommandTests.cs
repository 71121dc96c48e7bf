using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Rules;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class AssignCommandTests : IDisposable
{
    /// <summary>One monitor that may go to any output of the box; nothing patched.</summary>
    private static readonly string Open =
        Shows
            .Small[..Shows.Small.IndexOf("  \"patch\"", StringComparison.Ordinal)]
            .TrimEnd()
            .TrimEnd(',')
            .Replace("\"at\": \"box/out/1\"", "\"devices\": [ \"box\" ]", StringComparison.Ordinal) + "\n}\n";

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_completed_show_goes_to_standard_output_and_can_be_read_again()
    {
        var path = folder.Write("a.show.json", Open);
        var result = Tool.Run("assign", path, "--config", folder.Write("c.json", QuietConfig.Text())).Civil();

        Assert.Equal(0, result.Code);
        var show = ShowReader.Read(result.OutBytes);
        Assert.True(show.IsUsable);
        Assert.Single(show.Value!.Patch.Streams);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Show, result.OutBytes));
        Assert.Contains("1 placed, 0 not placed", result.Error, StringComparison.Ordinal);
        Assert.Equal(Open, File.ReadAllText(path));

        // The lowest of eight free outputs: the sum of numbers is the last aim.
        var trace = Tool.Run(["trace", "-", "box/out/1"], result.OutBytes).Civil();
        Assert.Contains("desk/aux/1 is a source inside the device.", trace.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void With_out_the_show_goes_to_the_file_and_the_report_to_standard_output()
    {
        var path = folder.Write("a.show.json", Open);
        var bare = Tool.Run("assign", path, "--quiet").Civil();
        var result = Tool.Run("assign", path, "--out", folder.At("out.show.json")).Civil();

        Assert.Equal("", bare.Error);
        Assert.Equal(bare.OutBytes, File.ReadAllBytes(folder.At("out.show.json")));
        Assert.StartsWith("Small: everything is placed; ", result.Out, StringComparison.Ordinal);
        Assert.Contains("\nbox\n  out/1  Monitor  from desk/aux/1  new\n", result.Out, StringComparison.Ordinal);
        Assert.Equal(["a.show.json", "out.show.json"], folder.Names);
    }

    [Fact]
    public void The_json_report_meets_the_published_schema_and_tells_the_places()
    {
        var path = folder.Write("a.show.json", Open);
        var result = Tool.Run("assign", path, "--out", folder.At("out.show.json"), "--format", "json").Civil();

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, result.OutBytes));
        var root = JsonDocument.Parse(result.OutBytes).RootElement;
        var assignment = root.GetProperty("assignment");
        Assert.Equal("box/out/1", assignment.GetProperty("placements")[0].GetProperty("at").GetString());
        Assert.Equal("mon/1", assignment.GetProperty("placements")[0].GetProperty("demand").GetString());
        Assert.Equal(14, assignment.GetProperty("objective").GetArrayLength());
        Assert.Equal(folder.At("out.show.json"), root.GetProperty("documents")[0].GetProperty("path").GetString());
    }

    [Fact]
    public void What_finds_no_place_ends_with_1_and_is_named_with_the_reason()
    {
        var path = folder.Write("a.show.json", Open);
        var config = folder.Write("c.json", QuietConfig.Text());
        var result = Tool.Run("assign", path, "--config", config, "--without", "box/out/1-8", "--report", $"json={folder.At("r.json")}").Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("not placed: mon/1: ", result.Error, StringComparison.Ordinal);
        Assert.True(ShowReader.Read(result.OutBytes).IsUsable);
        var unplaced = JsonDocument.Parse(File.ReadAllBytes(folder.At("r.json"))).RootElement.GetProperty("assignment").GetProperty("unplaced")[0];
        Assert.Equal("mon/1", unplaced.GetProperty("demand").GetString());
        Assert.NotEqual("", unplaced.GetProperty("reason").GetString());
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, File.ReadAllBytes(folder.At("r.json"))));
    }

    [Fact]
    public void Doing_without_a_point_moves_on_to_the_next()
    {
        var result = Tool.Run(
                ["assign", "-", "--without", "box/out/1", "--without", "box/out/2", "--out", folder.At("o.show.json")],
                Encoding.UTF8.GetBytes(Open)
            )
            .Civil();

        Assert.Contains("  out/3  Monitor", result.Out, StringComparison.Ordinal);
        Assert.Equal(
            ["box/out/1", "box/out/2"],
            ShowReader.Read(File.ReadAllBytes(folder.At("o.show.json"))).Value!.Rig.Unavailable.Select(points => points.At.ToString())
        );
    }

    [Fact]
    public void Labels_are_written_when_asked_for()
    {
        var path = folder.Write("a.show.json", Open);

        Assert.Empty(ShowReader.Read(Tool.Run("assign", path).Civil().OutBytes).Value!.Patch.Labels);
        Assert.Contains(
            ShowReader.Read(Tool.Run("assign", path, "--labels").Civil().OutBytes).Value!.Patch.Labels,
            label => label.At.ToString() == "box/out/1"
        );
    }

    [Fact]
    public void Spares_of_the_option_win_over_those_of_the_configuration()
    {
        var path = folder.Write("a.show.json", Open);
        var config = folder.Write("c.json", QuietConfig.Text().Replace("\"rules\"", "\"assignment\": { \"spares\": 8 }, \"rules\"", StringComparison.Ordinal));

        // Eight outputs: with eight kept free none is left for the monitor, with seven one is.
        Assert.Equal(1, Tool.Run("assign", path, "--config", config).Civil().Code);
        Assert.Equal(0, Tool.Run("assign", path, "--config", config, "--spares", "7").Civil().Code);
    }

    [Fact]
    public void Findings_about_the_result_end_with_1_and_undecided_rules_with_3()
    {
        var path = folder.Write("a.show.json", Open);
        var config = folder.Write("c.json", QuietConfig.Text());
        string[] arguments = ["assign", path, "--config", config];

        Assert.Equal(1, Tool.Run(arguments, [], default, TestRule.Reports("TT1001", Severity.Warning)).Civil().Code);
        Assert.Equal(0, Tool.Run(arguments, [], default, TestRule.Reports("TT1001", Severity.Note)).Civil().Code);
        Assert.Equal(3, Tool.Run(arguments, [], default, TestRule.CannotDecide("TT1001")).Civil().Code);
    }

    [Theory]
    [InlineData("nobody")]
    [InlineData("box/out/99")]
    [InlineData("box/out/0")]
    [InlineData("")]
    public void Doing_without_something_unknown_is_wrong_usage(string name)
    {
        var result = Tool.Run("assign", folder.Write("a.show.json", Open), "--without", name, "--out", folder.At("o.show.json")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("--without: ", result.Error, StringComparison.Ordinal);
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Fact]
    public void A_format_without_a_place_for_the_report_is_wrong_usage()
    {
        var result = Tool.Run("assign", folder.Write("a.show.json", Open), "--format", "json").Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains("--out FILE", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_strategy_in_the_configuration_is_wrong_usage()
    {
        var config = folder.Write("c.json", """{ "schemaVersion": 1, "assignment": { "strategy": "magic" } }""");
        var result = Tool.Run("assign", folder.Write("a.show.json", Open), "--config", config).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("'magic'", result.Error, StringComparison.Ordinal);
        Assert.Contains("exact, greedy", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_strategy_is_wrong_usage_and_the_names_there_are_are_told()
    {
        var result = Tool.Run("assign", folder.Write("a.show.json", Open), "--strategy", "magic").Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("--strategy asks for the strategy 'magic'", result.Error, StringComparison.Ordinal);
        Assert.Contains("exact, greedy", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_option_for_the_strategy_wins_over_the_configuration()
    {
        var config = folder.Write("c.json", """{ "schemaVersion": 1, "assignment": { "strategy": "magic" } }""");
        var result = Tool.Run("assign", folder.Write("a.show.json", Open), "--config", config, "--strategy", "greedy").Civil();

        Assert.Equal(Tool.Run("assign", folder.At("a.show.json")).Code, result.Code);
    }

    [Fact]
    public void An_interrupted_assignment_writes_no_file()
    {
        using var stop = new CancellationTokenSource();
        var result = Tool.Run(
                ["assign", folder.Write("a.show.json", Open), "--out", folder.At("o.show.json")],
                [],
                stop.Token,
                TestRule.Interrupts("TT1001", stop)
            )
            .Civil();

        Assert.Equal(3, result.Code);
        Assert.Equal(["a.show.json"], folder.Names);
    }

    [Fact]
    public void The_same_show_gives_the_same_bytes()
    {
        var path = Repository.At("schema", "examples", "02-club-night.show.json");
        var first = Tool.Run("assign", path, "--report", $"json={folder.At("1.json")}");
        var second = Tool.Run("assign", path, "--report", $"json={folder.At("2.json")}");

        Assert.Equal(first.OutBytes, second.OutBytes);
        Assert.Equal(File.ReadAllBytes(folder.At("1.json")), File.ReadAllBytes(folder.At("2.json")));
    }
}
