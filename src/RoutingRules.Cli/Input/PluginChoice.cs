using System.CommandLine;
using RoutingRules.Engine.Plugins;
using RoutingRules.Plugins;

namespace RoutingRules.Cli.Input;

/// <summary>The option <c>--plugin</c>, the same for every command that makes an engine.</summary>
internal static class PluginChoice
{
    /// <summary>Commands without an engine of their own.</summary>
    private static readonly string[] Without = ["schemas", "upgrade"];

    /// <summary>Adds the option to the commands that can use plugins.</summary>
    public static Option<string[]> AddTo(RootCommand root)
    {
        var option = new Option<string[]>("--plugin")
        {
            HelpName = "FILE",
            Description =
                "Load the plugins of an assembly (.dll); may be given several times. A plugin is code that runs with your rights: name what you trust.",
            DefaultValueFactory = _ => [],
        };
        foreach (var command in root.Subcommands.Where(command => !Without.Contains(command.Name)))
        {
            command.Options.Add(option);
        }

        return option;
    }

    /// <summary>The console with the plugins that are named as well.</summary>
    /// <exception cref="UsageException">One cannot be loaded, or two have the same id.</exception>
    public static CliConsole Load(IEnumerable<string> paths, CliConsole console)
    {
        var loaded = new List<RoutingPlugin>(console.Plugins);
        var places = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            {
                throw new UsageException("the path after --plugin is empty or holds a zero character; name an assembly file.");
            }

            foreach (var plugin in LoadFile(path))
            {
                if (!places.TryAdd(plugin.Info.Id, path))
                {
                    throw new UsageException(
                        places[plugin.Info.Id] == path
                            ? $"'{path}' is named twice, or holds two plugins with the id '{plugin.Info.Id}'; name it once."
                            : $"'{places[plugin.Info.Id]}' and '{path}' both hold a plugin with the id '{plugin.Info.Id}'; name one of them."
                    );
                }

                loaded.Add(plugin);
            }
        }

        return console with
        {
            Plugins = loaded,
        };
    }

    private static IReadOnlyList<RoutingPlugin> LoadFile(string path)
    {
        try
        {
            return PluginLoader.Load(path);
        }
        catch (PluginLoadException fault)
        {
            throw new UsageException(fault.Message);
        }
    }
}
