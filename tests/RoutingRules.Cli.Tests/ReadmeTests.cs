using System.Text;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

/// <summary>Holds README.md to what it says.</summary>
/// <remarks>
/// A comment on a line of its own marks the fenced block that follows it:
/// <c>&lt;!-- commands: .ci/run --&gt;</c> for commands, each of which must be a line of that file;
/// <c>&lt;!-- example: path --&gt;</c> for program text, which must be what stands in that file between the lines
/// <c>// readme: begin</c> and <c>// readme: end</c>.
/// Every command of the tool must have a row of a table that begins with its name in backticks.
/// </remarks>
public sealed class ReadmeTests
{
    private static readonly string[] Lines = File.ReadAllLines(Repository.At("README.md"));

    [Fact]
    public void The_commands_of_the_readme_are_what_the_checks_run()
    {
        var blocks = Blocks("commands");

        Assert.NotEmpty(blocks);
        foreach (var (file, block) in blocks)
        {
            var run = File.ReadAllLines(Repository.At(file));
            Assert.NotEmpty(block);
            Assert.All(block, command => Assert.Contains(command, run));
        }
    }

    [Fact]
    public void The_commands_stand_at_the_top_and_are_two() => Assert.Equal(2, Assert.Single(Blocks("commands")).Block.Length);

    [Fact]
    public void The_example_of_the_readme_is_compiled_as_it_stands()
    {
        var (file, block) = Assert.Single(Blocks("example"));
        var source = File.ReadAllLines(Repository.At(file));
        var begin = Array.IndexOf(source, "// readme: begin");
        var end = Array.IndexOf(source, "// readme: end");

        Assert.True(begin >= 0 && end > begin);
        Assert.Equal(source[(begin + 1)..end], block);
    }

    [Fact]
    public void The_example_does_what_the_readme_says()
    {
        Assert.Empty(LoadIn.Prepare(Encoding.UTF8.GetBytes(Shows.Small)).Where(line => line.StartsWith("mon", StringComparison.Ordinal)));
        Assert.StartsWith("line 1: ", Assert.Single(LoadIn.Prepare("{"u8.ToArray())), StringComparison.Ordinal);

        var nowhere = Shows.Small.Replace("\"at\": \"box/out/1\"", "\"devices\": [ \"nobody\" ]", StringComparison.Ordinal);
        Assert.Contains(LoadIn.Prepare(Encoding.UTF8.GetBytes(nowhere)), line => line.StartsWith("mon/1: ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_table_of_commands_names_every_command()
    {
        var help = Tool.Run("--help").Out;
        var commands = help[help.IndexOf("\nCommands\n", StringComparison.Ordinal)..help.IndexOf("\nOptions\n", StringComparison.Ordinal)]
            .Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(line => line.Trim().Split(' ')[0]);
        var rows = Lines.Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('`')[1].Split(' ')[0]).ToList();

        Assert.All(commands, command => Assert.Contains(command, rows));
    }

    /// <summary>The marked blocks: the path in the mark, and the lines between the fences.</summary>
    private static List<(string File, string[] Block)> Blocks(string mark)
    {
        var found = new List<(string File, string[] Block)>();
        for (var i = 0; i < Lines.Length; i++)
        {
            if (Lines[i].StartsWith($"<!-- {mark}: ", StringComparison.Ordinal) && Lines[i].EndsWith(" -->", StringComparison.Ordinal))
            {
                Assert.StartsWith("```", Lines[i + 1], StringComparison.Ordinal);
                var end = Array.IndexOf(Lines, "```", i + 2);
                found.Add((Lines[i][(mark.Length + 7)..^4], Lines[(i + 2)..end]));
            }
        }

        return found;
    }
}
