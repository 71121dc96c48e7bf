using RoutingRules.Engine.Configuration;
using RoutingRules.Plugins;
using RoutingRules.Profiles.Generic;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Cli.Input;

/// <summary>Makes the engine that the options of a command ask for.</summary>
internal static class EngineSetup
{
    /// <param name="profileFolders">Folders of profiles; earlier ones win, all win over the generic profiles.</param>
    /// <param name="config">The configuration.</param>
    /// <param name="console">The plugins.</param>
    /// <exception cref="UsageException">A folder or the configuration cannot be used.</exception>
    public static RoutingEngine Create(IReadOnlyList<string> profileFolders, LoadedConfig config, CliConsole console)
    {
        var builder = RoutingEngine.CreateBuilder().UseConfig(config.Config);
        foreach (var plugin in console.Plugins)
        {
            AddPlugin(builder, plugin);
        }

        foreach (var folder in profileFolders)
        {
            builder.AddProfiles(ReadProfiles(folder));
        }

        if (builder.FindConfigProblems() is { IsEmpty: false } problems)
        {
            throw ConfigSetup.Unusable(problems.Select(problem => $"{config.PlaceOf(problem.Pointer)}: {problem.Message}"));
        }

        try
        {
            return builder.AddProfiles(new GenericProfiles()).Build();
        }
        catch (InvalidOperationException fault)
        {
            throw new UsageException(fault.Message);
        }
    }

    private static void AddPlugin(RoutingEngineBuilder builder, RoutingPlugin plugin)
    {
        try
        {
            builder.AddPlugin(plugin);
        }
        catch (Exception fault)
        {
            throw new UsageException(
                $"the plugin '{plugin.Info.Id}' failed while it added what it brings: {fault.Message.TrimEnd('.')}. Leave it out, or ask who wrote it."
            );
        }
    }

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
                : throw new UsageException(
                    $"profiles of the folder '{folder}' cannot be used; mend them or take them away.\n{string.Join('\n', source.Problems)}"
                );
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"profiles of the folder '{folder}' cannot be read: {fault.Message}");
        }
    }
}
