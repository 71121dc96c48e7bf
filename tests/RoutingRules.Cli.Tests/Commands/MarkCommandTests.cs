using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class MarkCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static string Club => File.ReadAllText(Repository.At("schema", "examples", "02-club-night.show.json"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_dead_output_is_written_into_the_text_and_the_cable_that_hangs_there_is_told()
    {
        var path = folder.Write("a.show.json", Club);

        var result = Tool.Run("mark", path, "--no-config", "--dead", "Stage box out 3", "--reason", "no signal", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("1 result recorded; 1 feed or line to assign again\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("  Stage box output 3 does not work (no signal); 'Monitor singer' stood there\n", result.Out, StringComparison.Ordinal);
        Assert.Contains(
            "    The cable to Wedge 1 input 1 has to be plugged elsewhere: Stage box output 5 is free. "
                + "Then say --moved \"Stage box output 3=Stage box output 5\".\n",
            result.Out,
            StringComparison.Ordinal
        );
        var marked = File.ReadAllText(folder.At("b.show.json"));
        Assert.Contains("\"at\": \"box/out/3\", \"reason\": \"no signal\", \"since\": ", marked, StringComparison.Ordinal);
        Assert.Contains("{ \"id\": \"stage\", \"name\": \"Stage\", \"side\": \"centre\", \"walk\": 1 },", marked, StringComparison.Ordinal);
    }

    [Fact]
    public void A_filled_in_list_is_taken_and_a_swap_seen_from_both_ends_is_one()
    {
        var path = folder.Write("a.show.json", Club);
        var list = folder.Write(
            "r.csv",
            "Line;Enters at;Result;Found at\nKick;Stage box in 1;swapped;Stage box in 2\nSnare;box/in/2;Swapped;Stage box in 1\nBass;box/in/4;;\n"
        );

        var result = Tool.Run("mark", path, "--no-config", "--results", list, "--dry-run").Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains(
            "1 result would be recorded; 2 feeds and lines to assign again\n  The plugs at Stage box input 1 and Stage box input 2 are the other way round: "
                + "'Kick' is at Stage box input 2, 'Snare' at Stage box input 1\n  Assign again: Kick, Snare\n",
            result.Out,
            StringComparison.Ordinal
        );
        Assert.Equal(Club, File.ReadAllText(path));
    }

    [Theory]
    [InlineData("Enters at,Result\nbox/in/1,swaped\n", "line 2, column \"result\": 'swaped' is no result; did you mean swapped?")]
    [InlineData("Enters at,Result\nStage bix in 1,dead\n", "line 2, column \"point\": No connector is called 'Stage bix in 1'.")]
    [InlineData("Enters at\nbox/in/1\n", "line 1: No column says what was found.")]
    [InlineData("", "No column says which connector a row is about.")]
    [InlineData(
        "Enters at,Result,Found at\nbox/in/1,moved,box/in/2\n",
        "line 2: box/in/2 is taken by 'Snare'; say that the two are swapped, or where that one was found."
    )]
    public void A_list_with_a_mistake_changes_nothing_and_the_place_is_told(string text, string problem)
    {
        var path = folder.Write("a.show.json", Club);
        var list = folder.Write("r.csv", text);

        var result = Tool.Run("mark", path, "--no-config", "--results", list, "--in-place").Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(problem, result.Error, StringComparison.Ordinal);
        Assert.Equal(Club, File.ReadAllText(path));
    }

    [Theory]
    [InlineData("nothing was found; say what, with --dead, --works, --reserved, --swapped, --moved or --results.")]
    [InlineData("--swapped: 'box/in/1' must name two connectors, as ONE=OTHER.", "--swapped", "box/in/1")]
    [InlineData("--dead: nothing is called 'Stage bux out 1'.", "--dead", "Stage bux out 1")]
    [InlineData("--dead box/out/99: there is no box/out/99 in the rig", "--dead", "box/out/99")]
    [InlineData("--out, --in-place and --dry-run exclude one another", "--dead", "box/out/3", "--in-place", "--dry-run")]
    public void Wrong_usage_is_told(string problem, params string[] options)
    {
        var path = folder.Write("a.show.json", Club);

        var result = Tool.Run(["mark", path, "--no-config", .. options]).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(problem, result.Error, StringComparison.Ordinal);
    }
}
