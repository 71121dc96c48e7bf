using RoutingRules.Cli.Output;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

public sealed class OutputFileTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Nothing_is_at_the_target_until_it_is_whole()
    {
        var path = folder.Write("a.txt", "old");
        using (var file = OutputFile.Begin(path, []))
        {
            file.Content.Write("new"u8);
            Assert.Equal("old", File.ReadAllText(path));
            file.Commit();
        }

        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Giving_up_leaves_the_target_as_it_was_and_nothing_beside_it()
    {
        var path = folder.Write("a.txt", "old");
        using (var file = OutputFile.Begin(path, []))
        {
            file.Content.Write("new"u8);
        }

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Fact]
    public void Two_runs_at_once_do_not_share_a_file()
    {
        using var first = OutputFile.Begin(folder.At("a.txt"), []);
        using var second = OutputFile.Begin(folder.At("a.txt"), []);
        first.Content.Write("first"u8);
        second.Content.Write("second"u8);
        first.Commit();
        second.Commit();

        Assert.Equal("second", File.ReadAllText(folder.At("a.txt")));
        Assert.Equal(["a.txt"], folder.Names);
    }

    [Theory]
    [InlineData("none/o.json", "make the folder first")]
    [InlineData(".", "is a folder")]
    [InlineData("sub/", "is a folder")]
    [InlineData("sub", "is a folder")]
    [InlineData("a.show.json", "is the input itself")]
    [InlineData("link.show.json", "is the input itself")]
    [InlineData("./sub/../a.show.json", "is the input itself")]
    [InlineData("locked.json", "write-protected")]
    public void A_target_that_cannot_be_written_is_refused_with_a_remedy(string name, string expected)
    {
        var input = folder.Write("a.show.json", Shows.Small);
        Directory.CreateDirectory(folder.At("sub"));
        File.CreateSymbolicLink(folder.At("link.show.json"), input);
        File.SetAttributes(folder.Write("locked.json", "mine"), FileAttributes.ReadOnly);
        var before = folder.Names;

        foreach (var arguments in new string[][] { ["assign", input, "--out", folder.At(name)], ["check", input, "--report", "json=" + folder.At(name)] })
        {
            var result = Tool.Run(arguments).Civil();
            Assert.Equal(2, result.Code);
            Assert.Equal("", result.Out);
            Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        }

        Assert.Equal(before, folder.Names);
        Assert.Equal(Shows.Small, File.ReadAllText(input));
        File.SetAttributes(folder.At("locked.json"), FileAttributes.Normal);
    }

    [Fact]
    public void A_device_is_no_target()
    {
        var result = Tool.Run("assign", folder.Write("a.show.json", Shows.Small), "--out", "/dev/null").Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("no place for a file", result.Error, StringComparison.Ordinal);
        using var device = new FileStream("/dev/null", FileMode.Open, FileAccess.Write);
        device.Write("still swallowed"u8);
        device.Flush();
        Assert.Equal(0, device.Length);
    }

    [Fact]
    public void Two_outputs_cannot_share_a_file()
    {
        var input = folder.Write("a.show.json", Shows.Small);
        foreach (var arguments in new string[][]
        {
            ["assign", input, "--out", folder.At("o.json"), "--report", "json=" + folder.At("./o.json")],
            ["check", input, "--report", "text=" + folder.At("o.json"), "--report", "json=" + folder.At("o.json")],
        })
        {
            var result = Tool.Run(arguments).Civil();
            Assert.Equal(2, result.Code);
            Assert.Contains("give each its own file", result.Error, StringComparison.Ordinal);
            Assert.Equal(["a.show.json"], folder.Names);
        }
    }

    [Fact]
    public void An_input_in_a_checked_folder_is_never_overwritten()
    {
        folder.Write("shows/a.show.json", Shows.Small);
        var result = Tool.Run("check", folder.At("shows"), "--report", "json=" + folder.At("shows/a.show.json")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Equal(Shows.Small, File.ReadAllText(folder.At("shows/a.show.json")));
    }

    [Fact]
    public void A_folder_given_as_a_file_is_reported()
    {
        foreach (var arguments in new string[][] { ["assign", folder.Root], ["trace", folder.Root, "desk/aux/1"] })
        {
            var result = Tool.Run(arguments).Civil();
            Assert.Equal(2, result.Code);
            Assert.Contains("This is a folder, not a file.", result.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_reader_that_went_away_ends_with_2_and_a_message()
    {
        using var error = new StringWriter();
        using var gone = new ClosedPipe();
        var code = CliRunner.Run(["new"], new CliConsole(Stream.Null, gone, error));

        Assert.Equal(2, code);
        Assert.Contains("reading or writing failed", error.ToString(), StringComparison.Ordinal);
    }

    private sealed class ClosedPipe : MemoryStream
    {
        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("Broken pipe");

        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("Broken pipe");
    }
}
