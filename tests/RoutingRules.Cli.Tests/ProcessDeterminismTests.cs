using System.Diagnostics;
using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Documents;
using RoutingRules.Testing;

namespace RoutingRules.Cli.Tests;

/// <summary>
/// The same documents give the same bytes in processes of their own: each has another hash seed for strings (the runtime draws one at every start),
/// and they run in other time zones and cultures, with the machine's own culture data instead of the invariant ones.
/// </summary>
public sealed class ProcessDeterminismTests : IDisposable
{
    private static readonly (string Zone, string Language, bool IsInvariant)[] Surroundings =
    [
        ("UTC", "C", true),
        ("UTC", "C", true),
        ("Pacific/Kiritimati", "tr_TR.UTF-8", false),
        ("America/St_Johns", "ar_SA.UTF-8", false),
        ("Asia/Kathmandu", "de_DE.UTF-8", false),
    ];

    private readonly string folder = Directory.CreateTempSubdirectory("routing-rules-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void Checks_of_a_folder_are_the_same_bytes_in_every_process()
    {
        Write(ShowArbitraries.Messy().Generator.Sample(8, new Rnd(20270612), 60).Concat(ShowArbitraries.Valid().Generator.Sample(8, new Rnd(20270612), 60)));

        var outputs = Surroundings.Select(surrounding => Run(surrounding, "check", folder, "--format", "json")).ToArray();

        Assert.Contains("\"documents\": 16", outputs[0]);
        Assert.All(outputs, output => Assert.Equal(outputs[0], output));
    }

    [Fact]
    public void Text_reports_are_the_same_bytes_in_every_process()
    {
        Write(ShowArbitraries.Messy().Generator.Sample(4, new Rnd(20270612), 60));

        var outputs = Surroundings.Select(surrounding => Run(surrounding, "check", folder)).ToArray();

        Assert.NotEmpty(outputs[0]);
        Assert.All(outputs, output => Assert.Equal(outputs[0], output));
    }

    [Fact]
    public void Assignments_are_the_same_bytes_in_every_process()
    {
        Write(ShowArbitraries.ToAssign().Generator.Sample(4, new Rnd(20270612), 100));

        foreach (var file in Directory.GetFiles(folder).Order(StringComparer.Ordinal))
        {
            var outputs = Surroundings.Select(surrounding => Run(surrounding, "assign", file, "--budget", "20000")).ToArray();

            Assert.StartsWith("{", outputs[0], StringComparison.Ordinal);
            Assert.All(outputs, output => Assert.Equal(outputs[0], output));
        }
    }

    private void Write(IEnumerable<Model.Show> shows)
    {
        foreach (var (index, show) in shows.Index())
        {
            File.WriteAllBytes(Path.Combine(folder, $"{index:00}.show.json"), ShowWriter.ToUtf8(show));
        }
    }

    private string Run((string Zone, string Language, bool IsInvariant) surrounding, params string[] arguments)
    {
        var tool = Path.Combine(AppContext.BaseDirectory, "routing-rules.dll");
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add("--runtimeconfig");
        start.ArgumentList.Add(RuntimeConfig(tool, surrounding.IsInvariant));
        start.ArgumentList.Add(tool);
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["TZ"] = surrounding.Zone;
        start.Environment["LC_ALL"] = surrounding.Language;
        start.Environment["LANG"] = surrounding.Language;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode is 0 or 1 or 3, $"Exit code {process.ExitCode}: {errors.Result}");
        return output;
    }

    /// <summary>The tool's runtime configuration, with the culture data of the machine switched on where wanted.</summary>
    private string RuntimeConfig(string tool, bool isInvariant)
    {
        const string invariant = "\"System.Globalization.Invariant\": true";
        var own = File.ReadAllText(Path.ChangeExtension(tool, ".runtimeconfig.json"));
        Assert.Contains(invariant, own);
        var path = Path.Combine(folder, $"{(isInvariant ? "invariant" : "machine")}.runtimeconfig.json");
        File.WriteAllText(path, isInvariant ? own : own.Replace(invariant, "\"System.Globalization.Invariant\": false", StringComparison.Ordinal));
        return path;
    }
}
