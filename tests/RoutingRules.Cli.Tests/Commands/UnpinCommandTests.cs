using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class UnpinCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static string Club => File.ReadAllText(Repository.At("schema", "examples", "02-club-night.show.json"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void What_is_named_by_its_name_is_let_go_and_the_rest_of_the_text_stays()
    {
        var path = folder.Write("a.show.json", Club);

        var result = Tool.Run("unpin", path, "--no-config", "--only", "Kick", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("1 place let free\n  kick may leave box/in/1 for another of box\n", result.Out, StringComparison.Ordinal);
        Assert.Contains(
            "{ \"id\": \"stage\", \"name\": \"Stage\", \"side\": \"centre\", \"walk\": 1 },",
            File.ReadAllText(folder.At("b.show.json")),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("pin")]
    [InlineData("unpin")]
    public void A_name_that_nothing_has_is_told(string command)
    {
        var path = folder.Write("a.show.json", Club);

        var result = Tool.Run(command, path, "--no-config", "--only", "Kicc").Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("--only: there is no feed or line 'Kicc'.", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Pinned_and_let_go_again_only_one_feed_changes()
    {
        var path = folder.Write("a.show.json", Club);

        var result = Tool.Run("pin", path, "--no-config", "--only", "Monitor singer", "--in-place").Civil();

        Assert.Contains("1 place pinned\n  mon-1/1 at wedge-1/in/1\n", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("wedge-2/in/1\" }", File.ReadAllText(path).Split("\"mon-2\"")[1].Split('\n')[0], StringComparison.Ordinal);
    }
}
