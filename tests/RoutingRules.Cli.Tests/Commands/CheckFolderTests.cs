using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class CheckFolderTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_folder_gives_its_shows_in_ordinal_order_and_nothing_else()
    {
        folder.Write("shows/b.show.json", Shows.Small);
        folder.Write("shows/B.show.json", Shows.Small);
        folder.Write("shows/a/z.show.json", Shows.Small);
        folder.Write("shows/notes.json", "no show");
        folder.Write("shows/readme.txt", "no show");
        var result = Tool.Run("check", folder.At("shows"), "--format", "json").Civil();

        var paths = JsonDocument
            .Parse(result.OutBytes)
            .RootElement.GetProperty("documents")
            .EnumerateArray()
            .Select(document => document.GetProperty("path").GetString());
        Assert.Equal([folder.At("shows/B.show.json"), folder.At("shows/a/z.show.json"), folder.At("shows/b.show.json")], paths);
    }

    [Fact]
    public void A_folder_that_leads_back_to_itself_ends()
    {
        folder.Write("shows/a.show.json", Shows.Small);
        Directory.CreateSymbolicLink(folder.At("shows/again"), folder.At("shows"));
        var result = Tool.Run("check", folder.At("shows")).Civil();

        Assert.StartsWith(folder.At("shows/a.show.json") + ": ", result.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("documents:", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_shows_is_wrong_usage()
    {
        Directory.CreateDirectory(folder.At("empty"));
        var result = Tool.Run("check", folder.At("empty")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains("holds no file named *.show.json", result.Error, StringComparison.Ordinal);
    }
}
