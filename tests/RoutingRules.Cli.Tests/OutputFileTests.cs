using System.Diagnostics;
using System.Runtime.Versioning;
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

    /// <summary>Also while it is in the making: another user of the machine could read along.</summary>
    [Theory]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead)]
    [InlineData(
        UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite
    )]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.OtherRead)]
    [UnsupportedOSPlatform("windows")]
    public void A_replaced_file_keeps_who_may_read_and_write_it(UnixFileMode mode)
    {
        var path = folder.Write("a.txt", "old");
        File.SetUnixFileMode(path, mode);
        using (var file = OutputFile.Begin(path, []))
        {
            file.Content.Write("new"u8);
            file.Content.Flush();
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(folder.At("a.txt.part-1")));
            file.Commit();
        }

        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(mode, File.GetUnixFileMode(path));
    }

    /// <summary>The file is the one behind the link; the link stays.</summary>
    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_private_show_stays_private_in_place_and_through_a_link()
    {
        var path = folder.Write(
            "a.show.json",
            Shows.Small.Replace("\"role\": \"monitor\"", "\"notes\": \"\", \"role\": \"monitor\"", StringComparison.Ordinal)
        );
        const UnixFileMode mine = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        File.SetUnixFileMode(path, mine);
        File.CreateSymbolicLink(folder.At("link.json"), path);
        Assert.Equal(2, Tool.Run("assign", path, "--out", folder.At("link.json")).Civil().Code);
        var other = folder.Write("old.show.json", "old");
        File.SetUnixFileMode(other, mine);
        File.CreateSymbolicLink(folder.At("other.json"), other);

        Assert.NotEqual(2, Tool.Run("assign", path, "--out", folder.At("other.json")).Civil().Code);
        Assert.NotEqual(2, Tool.Run("fix", path, "--unsafe", "--in-place").Civil().Code);

        Assert.Equal(mine, File.GetUnixFileMode(path));
        Assert.Equal(mine, File.GetUnixFileMode(other));
        Assert.NotEqual("old", File.ReadAllText(other));
        Assert.NotNull(File.ResolveLinkTarget(folder.At("other.json"), returnFinalTarget: false));
    }

    /// <summary>As whoever may give files away the owner is kept; as anybody else nobody gains by it. What stat(1) says is the judge.</summary>
    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_replaced_file_keeps_its_owner_where_that_is_permitted()
    {
        var path = folder.Write("a.txt", "old");
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        var isPermitted = Command("chown", "12345:12346", path).Code == 0;
        var before = Command("stat", "-c", "%u:%g %a", path).Output;
        Assert.Equal(isPermitted, before.StartsWith("12345:12346", StringComparison.Ordinal));
        using (var file = OutputFile.Begin(path, []))
        {
            file.Content.Write("new"u8);
            file.Commit();
        }

        Assert.Equal(before, Command("stat", "-c", "%u:%g %a", path).Output);
    }

    private static (int Code, string Output) Command(string name, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(name, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output);
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
    public void A_named_pipe_is_no_target_and_stays_one()
    {
        Assert.Equal(0, Command("mkfifo", folder.At("pipe")).Code);
        var result = Tool.Run("check", folder.Write("a.show.json", Shows.Small), "--report", "json=" + folder.At("pipe")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("no place for a file", result.Error, StringComparison.Ordinal);
        Assert.Equal("fifo", Command("stat", "-c", "%F", folder.At("pipe")).Output.Trim());
    }

    [Fact]
    public void Two_outputs_cannot_share_a_file()
    {
        var input = folder.Write("a.show.json", Shows.Small);
        foreach (
            var arguments in new string[][]
            {
                ["assign", input, "--out", folder.At("o.json"), "--report", "json=" + folder.At("./o.json")],
                ["check", input, "--report", "text=" + folder.At("o.json"), "--report", "json=" + folder.At("o.json")],
            }
        )
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
