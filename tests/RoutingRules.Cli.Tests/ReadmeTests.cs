using System.Text;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

/// <summary>Holds README.md to what it says.</summary>
/// <remarks>
/// A comment on a line of its own marks the fenced block that follows it.
/// <c>&lt;!-- command: NAME --&gt;</c>: one command, which <c>.ci/run</c> must run as well; there it may carry <c>--no-build</c>, further arguments at its end,
/// and <c>"$results/FILE"</c> for a file. There are two, <c>main-job</c> and <c>tests</c>, before the first heading of the second level.
/// <c>&lt;!-- example: embed --&gt;</c>: program text, which must be what stands in <c>ReadmeExample.cs</c> between the lines <c>// readme: begin</c> and
/// <c>// readme: end</c>. <c>config</c>, <c>lists</c> and <c>waivers</c> are documents that the tool must take.
/// Every command of the tool must have a table row that begins with its name in backticks.
/// </remarks>
public sealed class ReadmeTests
{
    private static readonly string[] Lines = File.ReadAllLines(Repository.At("README.md"));

    [Theory]
    [InlineData("main-job")]
    [InlineData("tests")]
    public void A_command_of_the_readme_is_what_the_checks_run(string name)
    {
        var command = Assert.Single(Block("command", name));
        var run = File.ReadAllLines(Repository.At(".ci", "run")).Select(AsTyped);

        Assert.StartsWith("dotnet ", command, StringComparison.Ordinal);
        Assert.Contains(run, line => line == command || line.StartsWith(command + " ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_two_commands_stand_at_the_top()
    {
        var top = Lines
            .TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))
            .Where(line => line.StartsWith("<!-- command: ", StringComparison.Ordinal));

        Assert.Equal(["<!-- command: main-job -->", "<!-- command: tests -->"], top);
    }

    [Fact]
    public void The_example_of_the_readme_is_compiled_as_it_stands()
    {
        var source = File.ReadAllLines(Repository.At("tests", "RoutingRules.Cli.Tests", "ReadmeExample.cs"));
        var begin = Array.IndexOf(source, "// readme: begin");
        var end = Array.IndexOf(source, "// readme: end");

        Assert.True(begin >= 0 && end > begin);
        Assert.Equal(source[(begin + 1)..end], Block("example", "embed"));
    }

    [Fact]
    public void The_example_does_what_the_readme_says()
    {
        Assert.DoesNotContain(LoadIn.Prepare(Encoding.UTF8.GetBytes(Shows.Small)), line => line.StartsWith("mon", StringComparison.Ordinal));
        Assert.StartsWith("line 1: ", Assert.Single(LoadIn.Prepare("{"u8.ToArray())), StringComparison.Ordinal);

        var nowhere = Shows.Small.Replace("\"at\": \"box/out/1\"", "\"devices\": [ \"nobody\" ]", StringComparison.Ordinal);
        Assert.Contains(LoadIn.Prepare(Encoding.UTF8.GetBytes(nowhere)), line => line.StartsWith("mon/1: ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_table_of_commands_names_every_command()
    {
        var help = Tool.Run("--help").Out;
        var commands = help[help.IndexOf("\nCommands\n", StringComparison.Ordinal)..help.IndexOf("\nOptions\n", StringComparison.Ordinal)]
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Skip(1)
            .Select(line => line.Trim().Split(' ')[0]);
        var rows = Lines.Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('`')[1].Split(' ')[0]).ToList();

        Assert.All(commands, command => Assert.Contains(command, rows));
    }

    [Fact]
    public void The_configuration_of_the_readme_is_one_that_the_tool_takes()
    {
        using var folder = new TempFolder();
        var text = string.Join('\n', Block("example", "config"));
        folder.Write("crew/house.json", """{ "schemaVersion": 1 }""");
        var config = folder.Write("tour/routing-rules.json", text);

        Assert.Contains("severity  error    " + config, Tool.Run("rules", "RR3007", "--effective", "--config", config).Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lists_of_the_readme_are_read_by_the_names_it_gives()
    {
        using var folder = new TempFolder();
        var show = folder.Write("a.show.json", File.ReadAllText(Repository.At("schema", "examples", "04-festival.show.json")));
        folder.Write("routing-rules.json", string.Join('\n', Block("example", "lists")));
        var list = folder.Write("lines.csv", "Channel name;48V;Colour\nSnare top;ON;red\n");

        Assert.Contains("\n  snare-top: phantom\n", Tool.Run("import", show, list, "--list", "lines", "--dry-run").Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_waivers_of_the_readme_excuse_what_they_name()
    {
        using var folder = new TempFolder();
        var waivers = folder.Write("waivers.json", string.Join('\n', Block("example", "waivers")));
        folder.Write("2027/festival/a.show.json", File.ReadAllText(Repository.At("schema", "examples", "05-festival-mistakes.show.json")));
        var result = Tool.Run("check", folder.Root, "--waivers", waivers, "--as-of", "2027-06-13").Civil();

        Assert.Contains("Waived by Mira, monitors until 2027-06-13: The support act keeps its wedge until Sunday\n", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("RR1012", result.Out, StringComparison.Ordinal);
    }

    /// <summary>The lines between the fences of a marked block.</summary>
    private static string[] Block(string kind, string name)
    {
        var mark = Array.IndexOf(Lines, $"<!-- {kind}: {name} -->");
        Assert.True(mark >= 0, $"README.md has no block marked {kind}: {name}.");
        Assert.StartsWith("```", Lines[mark + 1], StringComparison.Ordinal);
        return Lines[(mark + 2)..Array.IndexOf(Lines, "```", mark + 2)];
    }

    /// <summary>A line of the script as a person would type it.</summary>
    private static string AsTyped(string line) =>
        line.Replace("step dotnet", "dotnet", StringComparison.Ordinal)
            .Replace(" --no-build", "", StringComparison.Ordinal)
            .Replace("$results/", "", StringComparison.Ordinal)
            .Replace("\"", "", StringComparison.Ordinal)
            .Trim();
}
