using System.Diagnostics;
using System.Text;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

/// <summary>The tool as a process of its own: exit codes, and what goes to which stream.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Standard_output_carries_the_show_and_nothing_else()
    {
        var (code, output, error) = Start(null, "new", "--title", "Pr\u00f6be");

        Assert.Equal(0, code);
        Assert.Equal(Tool.Run("new", "--title", "Pr\u00f6be").OutBytes, output);
        Assert.Equal("", error);
    }

    [Fact]
    public void A_show_through_standard_input_is_assigned()
    {
        var (code, output, error) = Start(Tool.Run("new").OutBytes, "assign", "-", "--config", folder.Write("c.json", QuietConfig.Text()));

        Assert.Equal(0, code);
        Assert.True(RoutingRules.Documents.ShowReader.Read(output).IsUsable);
        Assert.Contains("7 placed", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_ends_with_2()
    {
        var (code, output, error) = Start(null, "check", folder.At("none.show.json"));

        Assert.Equal(2, code);
        Assert.Contains("There is no such file.", Encoding.UTF8.GetString(output), StringComparison.Ordinal);
        Assert.Equal("", error);
    }

    [Fact]
    public void Wrong_usage_says_nothing_on_standard_output()
    {
        var (code, output, error) = Start(null, "check");

        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_interrupt_while_waiting_for_input_ends_with_3()
    {
        using var process = Begin("check", "-", "--report", "json=" + folder.At("r.json"));
        SpinWait.SpinUntil(() => folder.Names.Length > 0, TimeSpan.FromSeconds(30));
        Signal(process, "INT");

        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(3, process.ExitCode);
        Assert.Contains("stopped on request", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }

    /// <summary>The reader of standard output rests, so that the tool cannot go on writing; its report in a file is in the making.</summary>
    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public void A_stop_while_nobody_reads_what_is_written_ends_with_3(string signal)
    {
        var lines = folder.Write("all.jsonl", string.Concat(Enumerable.Repeat(Shows.Small.ReplaceLineEndings(" ") + "\n", 2_000)));
        using var process = Begin("check", lines, "--report", "json=" + folder.At("r.json"));
        using var end = new Ending(process);
        WaitUntilIdle(process);
        Signal(process, signal);

        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(3, process.ExitCode);
        Assert.Equal(["all.jsonl"], folder.Names);
    }

    /// <summary>A strategy of a plugin never ends, and the file for the show is in the making then.</summary>
    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public async Task A_second_stop_ends_with_3_whatever_the_tool_is_at_and_leaves_no_file_behind(string signal)
    {
        var show = folder.Write("a.show.json", Shows.Small.Replace("\"at\": \"box/out/1\"", "\"devices\": [ \"box\" ]", StringComparison.Ordinal));
        using var process = Begin(
            "assign",
            show,
            "--plugin",
            Path.Join(AppContext.BaseDirectory, "RoutingRules.Cli.Tests.dll"),
            "--strategy",
            "endless",
            "--out",
            folder.At("o.show.json")
        );
        using var end = new Ending(process);
        SpinWait.SpinUntil(() => process.HasExited || folder.Names.Length > 1, TimeSpan.FromSeconds(30));
        Assert.Equal(["a.show.json", "o.show.json.part-1"], folder.Names);
        WaitUntilIdle(process);
        Signal(process, signal);
        Assert.Equal(
            "routing-rules: still stopping; interrupt once more to end at once.",
            await process.StandardError.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(30))
        );
        Signal(process, signal);

        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(3, process.ExitCode);
        Assert.Equal("", process.StandardOutput.ReadToEnd());
        Assert.Equal(["a.show.json"], folder.Names);
    }

    /// <summary>Leaves no process behind, however the test ends.</summary>
    private sealed class Ending(Process process) : IDisposable
    {
        public void Dispose()
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
    }

    private static void Signal(Process process, string signal)
    {
        using var kill = Process.Start("kill", ["-" + signal, process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    /// <summary>Waits until a process that has worked does so no longer.</summary>
    private static void WaitUntilIdle(Process process)
    {
        var worked = TimeSpan.Zero;
        SpinWait.SpinUntil(
            () =>
            {
                Thread.Sleep(300);
                process.Refresh();
                var isIdle = process.TotalProcessorTime - worked < TimeSpan.FromMilliseconds(20) && worked > TimeSpan.FromMilliseconds(200);
                worked = process.TotalProcessorTime;
                return isIdle;
            },
            TimeSpan.FromSeconds(30)
        );
    }

    private static Process Begin(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Join(AppContext.BaseDirectory, "routing-rules.dll"), .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardErrorEncoding = Encoding.UTF8,
        };
        return Process.Start(start)!;
    }

    private static (int Code, byte[] Output, string Error) Start(byte[]? input, params string[] arguments)
    {
        using var process = Begin(arguments);
        var error = process.StandardError.ReadToEndAsync();
        if (input is not null)
        {
            process.StandardInput.BaseStream.Write(input);
        }

        process.StandardInput.Close();
        using var output = new MemoryStream();
        process.StandardOutput.BaseStream.CopyTo(output);
        process.WaitForExit();
        return (process.ExitCode, output.ToArray(), error.GetAwaiter().GetResult());
    }
}
