using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Plugins;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary>How <c>check</c> and <c>assign</c> find their configuration.</summary>
public sealed class ConfigCommandTests : IDisposable
{
    private const string Show = """{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "x", "profile": "generic/amplifier-4" } ] } }""";

    private static readonly RoutingPlugin Plugin = TestRule.Reports("TT1001", Severity.Warning);

    private readonly TempFolder folder = new();

    public ConfigCommandTests()
    {
        folder.Write("tour/day-1/a.show.json", Show);
        folder.Write("tour/day-2/b.show.json", Show);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_nearest_configuration_above_the_shows_counts_and_is_named()
    {
        var top = folder.Write("routing-rules.json", QuietConfig.Text());
        Assert.Equal(1, Check("tour/day-1").Civil().Code);

        var near = folder.Write("tour/routing-rules.json", QuietConfig.Text("error"));
        var result = Check("tour/day-1").Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains(Path.GetFileName(Path.GetDirectoryName(near))! + "/routing-rules.json", result.Error, StringComparison.Ordinal);
        Assert.Contains("--no-config", result.Error, StringComparison.Ordinal);
        Assert.Equal("", Check("tour/day-1", "--quiet").Civil().Error);
        Assert.Equal(1, Check("tour/day-1", "--config", top).Civil().Code);
    }

    [Theory]
    [InlineData("impact", "tour/day-1/a.show.json")]
    [InlineData("why", "tour/day-1/a.show.json", "mon")]
    [InlineData("changeover", "tour/a.run.json")]
    public void A_configured_strategy_that_does_not_exist_is_told_by_every_command_that_assigns(string command, string file, params string[] more)
    {
        folder.Write("tour/a.run.json", """{ "schemaVersion": 1, "title": "T", "rig": {}, "acts": [ { "id": "one" } ] }""");
        folder.Write("tour/routing-rules.json", """{ "schemaVersion": 1, "assignment": { "strategy": "clairvoyant" } }""");
        var result = Tool.Run([command, folder.At(file), .. more]).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("the configuration asks for the strategy 'clairvoyant', which does not exist", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Shows_of_several_folders_take_what_lies_above_all_of_them()
    {
        folder.Write("tour/day-1/routing-rules.json", QuietConfig.Text("note"));
        folder.Write("tour/routing-rules.json", QuietConfig.Text("error"));

        Assert.Equal(1, Check("tour/day-1/a.show.json").Civil().Code);
        Assert.Equal(0, Tool.Run(["check", folder.At("tour/day-1/a.show.json"), folder.At("tour/day-2/b.show.json")], [], default, Plugin).Civil().Code);
    }

    [Fact]
    public void No_configuration_is_used_when_none_is_wanted()
    {
        folder.Write("routing-rules.json", QuietConfig.Text("error"));
        var result = Check("tour", "--no-config").Civil();

        Assert.Equal(1, result.Code);
        Assert.Equal("", result.Error);
        Assert.Equal(2, Check("tour", "--no-config", "--config", "a").Civil().Code);
    }

    [Fact]
    public void A_configuration_may_build_on_others_relative_to_itself()
    {
        folder.Write("crew/house.json", QuietConfig.Text("error"));
        folder.Write("tour/routing-rules.json", """{ "schemaVersion": 1, "extends": [ "../crew/house.json" ] }""");

        Assert.Equal(0, Check("tour").Civil().Code);
    }

    [Theory]
    [InlineData("""{ "schemaVersion": 1, "extends": [ "b.json" ] }""", "b.json: There is no such file.")]
    [InlineData("""{ "schemaVersion": 1, "extends": [ "routing-rules.json" ] }""", "routing-rules.json → ")]
    [InlineData("{ \"schemaVersion\": 1,\n \"colour\": 1 }", "routing-rules.json:2:2: ")]
    [InlineData(
        "{ \"schemaVersion\": 1, \"rules\": [\n { \"rule\": \"RR3*\" },\n { \"rule\": \"RR9999\" } ] }",
        "routing-rules.json:3:12: The configuration sets rule 'RR9999'"
    )]
    [InlineData(
        "{ \"schemaVersion\": 1, \"rules\": [ { \"rule\": \"RR3*\",\n \"options\": [ { \"name\": \"nothing\", \"value\": 1 } ] } ] }",
        "routing-rules.json:2:25: The configuration sets option 'nothing'"
    )]
    public void A_configuration_that_cannot_be_used_stops_the_run_with_its_place(string text, string expected)
    {
        folder.Write("tour/routing-rules.json", text);
        foreach (var command in new[] { "check", "assign" })
        {
            var result = Tool.Run([command, folder.At("tour/day-1/a.show.json"), "--report", $"json={folder.At("r.json")}"], [], default, Plugin).Civil();

            Assert.Equal((2, ""), (result.Code, result.Out));
            Assert.Contains(expected, result.Error, StringComparison.Ordinal);
            Assert.False(File.Exists(folder.At("r.json")));
        }
    }

    private ToolResult Check(string path, params string[] options) => Tool.Run(["check", folder.At(path), .. options], [], default, Plugin);
}
