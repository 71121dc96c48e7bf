using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

public sealed class UpgradeCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    private static byte[] Old => File.ReadAllBytes(Repository.At("tests", "RoutingRules.Tests", "Documents", "Versions", "pier.v0.show.json"));

    private static byte[] Current => File.ReadAllBytes(Repository.At("tests", "RoutingRules.Tests", "Documents", "Versions", "pier.v1.show.json"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_document_goes_to_standard_output_and_the_account_to_standard_error()
    {
        var result = Tool.Run(["upgrade", "-"], Old).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(Current, result.OutBytes);
        Assert.Contains("standard input: brought from format version 0 to 1.", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void With_out_the_account_says_what_was_changed()
    {
        var old = folder.Write("a.show.json", Old);
        var result = Tool.Run("upgrade", old, "--out", folder.At("b.show.json")).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(
            $"{old}: brought from format version 0 to 1.\n  /name is now title\n",
            result.Out[..(result.Out.IndexOf("title\n", StringComparison.Ordinal) + 6)]
        );
        Assert.Equal(Current, File.ReadAllBytes(folder.At("b.show.json")));
        Assert.Equal(Old, File.ReadAllBytes(old));
    }

    [Fact]
    public void In_place_changes_only_what_is_old()
    {
        var old = folder.Write("a.show.json", Old);
        var current = folder.Write("b.show.json", Current);
        var stamp = File.GetLastWriteTimeUtc(current);
        var result = Tool.Run("upgrade", old, current, "--in-place", "--format", "json").Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(Current, File.ReadAllBytes(old));
        Assert.Equal(Current, File.ReadAllBytes(current));
        Assert.Equal(stamp, File.GetLastWriteTimeUtc(current));
        using var json = JsonDocument.Parse(result.OutBytes);
        Assert.Equal([1, 0], json.RootElement.GetProperty("documents").EnumerateArray().Select(document => document.GetProperty("steps").GetArrayLength()));
        Assert.Equal(["a.show.json", "b.show.json"], folder.Names);
    }

    [Fact]
    public void One_bad_document_stops_all()
    {
        var old = folder.Write("a.show.json", Old);
        var bad = folder.Write("b.show.json", """{"schemaVersion":0,"name":"t","rig":{},"colour":1}""");
        var newer = folder.Write("c.run.json", """{"schemaVersion":9}""");
        var result = Tool.Run("upgrade", old, bad, newer, "--in-place").Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal("", result.Out);
        Assert.Contains($"{bad}: ", result.Error, StringComparison.Ordinal);
        Assert.Contains("c.run.json:1:18: The document says format version 9", result.Error, StringComparison.Ordinal);
        Assert.Contains("Use a newer version of the library.", result.Error, StringComparison.Ordinal);
        Assert.Contains("nothing was written", result.Error, StringComparison.Ordinal);
        Assert.Equal(Old, File.ReadAllBytes(old));
    }

    [Theory]
    [InlineData("upgrade a b", "several documents")]
    [InlineData("upgrade a a --in-place", "named twice")]
    [InlineData("upgrade a --out b --dry-run", "exclude one another")]
    [InlineData("upgrade - --in-place", "standard input cannot be written in place")]
    [InlineData("upgrade a --format json", "--format is for the account")]
    [InlineData("upgrade a --kind report", "--kind takes show, run, config, waivers or baseline, not 'report'")]
    [InlineData("upgrade box.profile.json", "carries no format version")]
    [InlineData("upgrade /nowhere/at/all.show.json", "There is no such file.")]
    public void Wrong_usage_ends_with_2(string line, string expected)
    {
        var result = Tool.Run(line.Split(' ')).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_command_reads_an_old_show_as_it_stands_and_fix_writes_the_present_version()
    {
        var old = folder.Write("a.show.json", Old);
        var check = Tool.Run("check", old).Civil();
        var mended = Tool.Run("fix", old).Civil();

        Assert.Equal(0, check.Code);
        Assert.Contains("RR1010", check.Out, StringComparison.Ordinal);
        Assert.Equal(0, Tool.Run("trace", old, "desk/aux/1").Civil().Code);
        Assert.Equal(0, mended.Code);
        Assert.Equal(Current, mended.OutBytes);
        Assert.Equal(0, Tool.Run("assign", old, "--out", folder.At("b.show.json")).Civil().Code);
    }
}
