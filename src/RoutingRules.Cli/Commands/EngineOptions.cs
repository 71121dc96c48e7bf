using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Engine.Configuration;

namespace RoutingRules.Cli.Commands;

/// <summary>The options that say with which configuration and profiles a command works.</summary>
internal sealed class EngineOptions : IOptionGroup
{
    private readonly Option<string?> config = ToolOptions.Config();
    private readonly Option<bool> noConfig = ToolOptions.NoConfig();
    private readonly Option<string[]> profiles = ToolOptions.Profiles();

    public IReadOnlyList<Option> Options => [config, noConfig, profiles];

    /// <summary>The engine that was asked for, and the configuration it uses.</summary>
    /// <exception cref="UsageException">A folder or the configuration cannot be used.</exception>
    public (RoutingEngine Engine, LoadedConfig Loaded) Create(
        ParseResult parsed,
        IReadOnlyList<string> paths,
        CliConsole console,
        CancellationToken cancellation,
        bool isQuiet = false
    )
    {
        var loaded = ConfigSetup.Load(new ConfigChoice(parsed.GetValue(config), parsed.GetValue(noConfig), isQuiet), paths, console, cancellation);
        return (EngineSetup.Create(parsed.GetRequiredValue(profiles), loaded, console), loaded);
    }
}
