using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class ChangeoverCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    private static string Example => Repository.At("schema", "examples", "06-two-days.run.json");

    [Fact]
    public void The_example_is_planned_without_a_complaint_and_gives_shows_that_are_clean()
    {
        Directory.CreateDirectory(folder.At("acts"));
        var result = Tool.Run("changeover", Example, "--format", "json", "--shows", folder.At("acts")).Civil();
        var root = JsonDocument.Parse(result.OutBytes).RootElement;

        Assert.Equal(0, result.Code);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Changeover, result.OutBytes));
        Assert.Equal(3, root.GetProperty("changeovers").GetArrayLength());
        Assert.All(root.GetProperty("acts").EnumerateArray(), act => Assert.Equal(0, act.GetProperty("unplaced").GetArrayLength()));
        Assert.Equal(4, Directory.GetFiles(folder.At("acts"), "*.show.json").Length);
        Assert.Equal(0, Tool.Run("check", folder.At("acts")).Civil().Code);
    }

    [Fact]
    public void No_card_of_the_example_has_more_than_25_lines_and_every_step_is_on_one()
    {
        var root = JsonDocument.Parse(Tool.Run("changeover", Example, "--format", "json").Civil().OutBytes).RootElement;

        Assert.All(
            root.GetProperty("changeovers").EnumerateArray(),
            changeover =>
            {
                var tasks = changeover.GetProperty("tasks").EnumerateArray().ToList();
                Assert.All(tasks.GroupBy(task => task.GetProperty("place").GetString()), card => Assert.InRange(card.Count(), 1, 25));
                Assert.Equal(
                    changeover.GetProperty("steps").EnumerateArray().Select(step => step.GetProperty("number").GetInt32()),
                    tasks.SelectMany(task => task.GetProperty("steps").EnumerateArray()).Select(step => step.GetInt32()).Order()
                );
            }
        );
    }

    [Fact]
    public void Two_shows_give_one_changeover_with_cautions_and_cards()
    {
        var first = folder.Write("first.show.json", Shows.Small);
        var second = folder.Write("second.show.json", Shows.Small.Replace("desk/aux/1", "desk/aux/2", StringComparison.Ordinal));
        var text = Tool.Run("changeover", first, second).Civil().Out;
        var json = Tool.Run("changeover", first, second, "--format", "json").Civil();

        Assert.Contains("Never unmute everything at once.", text, StringComparison.Ordinal);
        Assert.Contains("Last safe point to go back: after step", text, StringComparison.Ordinal);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Changeover, json.OutBytes));
        Assert.Equal(
            ["mute", "patch", "verify", "open"],
            JsonDocument
                .Parse(json.OutBytes)
                .RootElement.GetProperty("changeovers")[0]
                .GetProperty("steps")
                .EnumerateArray()
                .Select(step => step.GetProperty("phase").GetString())
        );
        Assert.StartsWith("<!DOCTYPE html>", Tool.Run("changeover", first, second, "--format", "html").Civil().Out, StringComparison.Ordinal);
        Assert.StartsWith("# ", Tool.Run("changeover", first, second, "--format", "markdown").Civil().Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("panel", "Route aux 2 to transmit slot 1.")]
    [InlineData("ids", "Route desk/aux/2 to desk/transmit/1.")]
    public void Cards_name_what_is_printed_on_the_panel(string style, string step)
    {
        var first = folder.Write("first.show.json", Shows.Small);
        var second = folder.Write("second.show.json", Shows.Small.Replace("desk/aux/1", "desk/aux/2", StringComparison.Ordinal));

        Assert.Contains(step, Tool.Run("changeover", first, second, "--names", style).Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_style_of_names_is_refused()
    {
        var result = Tool.Run("changeover", Example, "--names", "long").Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("'long' is no style of names; there are", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_input_is_told_and_nothing_is_written()
    {
        var show = folder.Write("a.show.json", Shows.Small);
        Assert.Contains("The document is a show, not a running order.", Tool.Run("changeover", show).Civil().Error, StringComparison.Ordinal);
        Assert.Contains("make it first", Tool.Run("changeover", Example, "--shows", folder.At("none")).Civil().Error, StringComparison.Ordinal);
        Assert.Contains("--shows is for a running order", Tool.Run("changeover", show, show, "--shows", folder.Root).Civil().Error, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run("changeover", folder.At("none.run.json"), "--out", folder.At("cards")).Civil().Code);
        Assert.False(File.Exists(folder.At("cards")));
    }

    [Fact]
    public void A_running_order_with_a_misspelt_lock_ends_with_1()
    {
        var run = folder.Write("a.run.json", """{ "schemaVersion": 1, "title": "Day", "rig": {}, "locked": [ "main" ], "acts": [ { "id": "one" } ] }""");
        var result = Tool.Run("changeover", run).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("'main' is locked, but the house has no such feed.", result.Out, StringComparison.Ordinal);
    }
}
