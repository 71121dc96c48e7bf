using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using static RoutingRules.Cli.Tests.Commands.ManyShowsFolder;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary>Several shows in one text.</summary>
public sealed class ManyShowsTextTests : IDisposable
{
    private readonly ManyShowsFolder shows = new();

    public void Dispose() => shows.Dispose();

    [Fact]
    public void Several_shows_on_standard_input_are_counted_and_placed_in_the_text()
    {
        var result = shows.Check(Bytes($"{One("x")}\n{One("y").Replace(" \"rig\"", "\n \"rig\"", StringComparison.Ordinal)} {One("z")}\n"), "-").Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains("standard input!/1: 1 error", result.Out, StringComparison.Ordinal);
        Assert.Contains("    standard input:1:59: Device x was looked at.\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("    standard input:3:24: Device y was looked at.\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("standard input!/3: 1 error", result.Out, StringComparison.Ordinal);
        Assert.Contains("    standard input:3:136: Device z was looked at.\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_malformed_line_is_told_with_its_line_and_the_following_lines_go_on()
    {
        var result = shows.Check(Bytes($"{One("x")}\n{One("y")[..50]}\n{One("z")}\nnonsense\n{One("w")}\n"), "-").Civil();

        Assert.Equal(2, result.Code);
        Assert.All("xzw", device => Assert.Contains($"Device {device} was looked at.", result.Out, StringComparison.Ordinal));
        Assert.Contains("standard input!/2: not read in full", result.Out, StringComparison.Ordinal);
        Assert.Contains("    standard input:2:", result.Out, StringComparison.Ordinal);
        Assert.Contains("    standard input:4:1: ", result.Out, StringComparison.Ordinal);
        Assert.Contains("5 documents: 0 clean, 3 with something to look at, 2 unreadable", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_json_lines_is_several_shows_even_with_one_line()
    {
        var one = shows.Check([], shows.Folder.Write("one.jsonl", One("x"))).Civil();
        Assert.Contains($"{shows.Folder.At("one.jsonl")}!/1: 1 error", one.Out, StringComparison.Ordinal);
        Assert.Contains($"    {shows.Folder.At("one.jsonl")}:1:59: ", one.Out, StringComparison.Ordinal);
        var empty = shows.Check([], shows.Folder.Write("none.jsonl", "\n\n")).Civil();
        Assert.Equal(2, empty.Code);
        Assert.Contains("The file is empty.", empty.Out, StringComparison.Ordinal);
        Assert.Contains("There is no such file.", shows.Check([], shows.Folder.At("missing.jsonl")).Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_offered_fix_speaks_of_the_places_in_the_text()
    {
        var show = File.ReadAllText(Repository.At("schema", "examples", "05-festival-mistakes.show.json"));
        var alone = Fixes(Tool.Run("check", shows.Folder.Write("a.show.json", show), "--no-config", "--fixes", "--format", "sarif").Civil());
        var second = Fixes(Tool.Run("check", shows.Folder.Write("a.jsonl", $"{One("x")}\n\n{show}"), "--no-config", "--fixes", "--format", "sarif").Civil());

        Assert.NotEmpty(alone);
        Assert.Equal(alone.Select(each => (each.Line + 2, each.Column)), second);
    }

    [Fact]
    public void Ten_thousand_shows_come_out_one_by_one_and_leave_nothing_behind()
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var seen = new List<WeakReference>();
        var (alive, written) = (0, 0L);
        using var input = new RepeatingStream(
            Bytes(One("x") + "\n"),
            10_000,
            count =>
            {
                written = count == 5_000 ? output.Length : written;
                if (count == 10_000)
                {
                    GC.Collect();
                    alive = seen.Count(reference => reference.IsAlive);
                }
            }
        );
        var watcher = TestRule.Watches("TT1002", device => seen.Add(new WeakReference(device)));
        var code = CliRunner.Run(
            ["check", "-", "--config", shows.Folder.At("quiet.json"), "--format", "json"],
            new CliConsole(input, output, error) { Plugins = [watcher] }
        );

        Assert.Equal(1, code);
        Assert.Equal(10_000, JsonDocument.Parse(output.ToArray()).RootElement.GetProperty("documents").GetArrayLength());
        Assert.InRange(written, output.Length * 4 / 10, output.Length * 6 / 10);
        Assert.True(seen.Count > 9_000);
        Assert.InRange(alive, 0, 10);
    }

    private static List<(int Line, int Column)> Fixes(ToolResult result) =>
        [
            .. JsonDocument
                .Parse(result.OutBytes)
                .RootElement.GetProperty("runs")[0]
                .GetProperty("results")
                .EnumerateArray()
                .Where(each => each.TryGetProperty("fixes", out _))
                .SelectMany(each => each.GetProperty("fixes").EnumerateArray())
                .Select(fix => fix.GetProperty("artifactChanges")[0].GetProperty("replacements")[0].GetProperty("deletedRegion"))
                .Select(region => (region.GetProperty("startLine").GetInt32(), region.GetProperty("startColumn").GetInt32())),
        ];
}
