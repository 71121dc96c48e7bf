using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Engine.Configuration;
using RoutingRules.Engine.Plugins;

namespace RoutingRules.Cli.Commands;

/// <summary><c>plugins</c>: what is built in and what was loaded.</summary>
internal static class PluginsCommand
{
    public static Command Create(CliConsole console)
    {
        var format = ToolOptions.TextOrJson("How the list is written: text (usual) or json.");
        var command = new ToolCommand(
            "plugins",
            "List what is built in and what plugins bring: rules, fixes, profiles and strategies. Plugins are loaded only where --plugin names them.",
            "routing-rules plugins\nLists what is built in.",
            "routing-rules plugins --plugin crew/Crew.Rules.dll\nAlso tells what a plugin brings."
        )
        {
            format,
        };
        command.SetAction(parsed =>
        {
            var bare = EngineSetup.Create([], LoadedConfig.Usual, console with { Plugins = [] });

            // Made once with all of them, so that plugins that clash are told here as well.
            _ = EngineSetup.Create([], LoadedConfig.Usual, console);
            PluginAccount.Write(console.Output, bare, [.. console.Plugins.Select(PluginContents.Of)], parsed.GetValue(format) == "json");
            return ExitCode.Clean;
        });
        return command;
    }
}
