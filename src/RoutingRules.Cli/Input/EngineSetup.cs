using RoutingRules.Configuration;
using RoutingRules.Profiles.Generic;
using RoutingRules.Reading;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Input;

/// <summary>Makes the engine that the options of a command ask for.</summary>
internal static class EngineSetup
{
    /// <param name="profileFolders">Folders of profiles; earlier ones win, all win over the generic profiles.</param>
    /// <param name="configPath">The configuration; null for the usual one.</param>
    /// <param name="console">Where the configuration may come from, and the plugins.</param>
    /// <param name="cancellation">Stops waiting for input.</param>
    /// <exception cref="UsageException">A folder or the configuration cannot be used.</exception>
    public static RoutingEngine Create(IReadOnlyList<string> profileFolders, string? configPath, CliConsole console, CancellationToken cancellation)
    {
        var builder = RoutingEngine.CreateBuilder().UseConfig(configPath is null ? new EngineConfig() : ReadConfig(configPath, console, cancellation));
        foreach (var plugin in console.Plugins)
        {
            builder.AddPlugin(plugin);
        }

        foreach (var folder in profileFolders)
        {
            builder.AddProfiles(ReadProfiles(folder));
        }

        try
        {
            return builder.AddProfiles(new GenericProfiles()).Build();
        }
        catch (InvalidOperationException fault)
        {
            throw new UsageException($"{configPath}: {fault.Message}");
        }
    }

    private static EngineConfig ReadConfig(string path, CliConsole console, CancellationToken cancellation)
    {
        var file = InputDocument.Load(path, console, cancellation);
        var read = file.Problem is { } problem ? new ReadResult<EngineConfig> { Findings = [problem] } : ConfigReader.Read(file.Utf8.Span);
        if (read.IsUsable)
        {
            return read.Value!;
        }

        var problems = read.Findings.Select(finding => $"{path}{Place(finding.Line, finding.Column)}: {finding.Message} {finding.Remedy}");
        throw new UsageException($"the configuration cannot be used.\n{string.Join('\n', problems)}");
    }

    private static string Place(int? line, int? column) => line is null ? "" : FormattableString.Invariant($":{line}:{column}");

    private static FolderProfileSource ReadProfiles(string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new UsageException($"there is no folder '{folder}' to take profiles from; check the path after --profiles.");
        }

        try
        {
            var source = new FolderProfileSource(folder);
            return source.Problems.Count == 0
                ? source
                : throw new UsageException($"profiles of the folder '{folder}' cannot be used; mend them or take them away.\n{string.Join('\n', source.Problems)}");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"profiles of the folder '{folder}' cannot be read: {fault.Message}");
        }
    }
}
