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
        Assert.True(Reading.ShowReader.Read(output).IsUsable);
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
        using (var kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal(3, process.ExitCode);
        Assert.Contains("stopped on request", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
        Assert.Empty(folder.Names);
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
