#pragma warning disable RS0030 // A plugin is a file that somebody named.
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using RoutingRules.Plugins;

namespace RoutingRules.Engine.Plugins;

/// <summary>Loads plugins from assembly files that somebody named.</summary>
/// <remarks>
/// A plugin is code that runs with all the rights of the program, from the moment it is loaded: load what you trust, and never what merely lies in a folder.
/// Each file gets an <see cref="System.Runtime.Loader.AssemblyLoadContext"/> of its own, so that plugins may bring different versions of a library; the
/// contracts are those of the program. Plugins stay loaded until the program ends.
/// </remarks>
public static class PluginLoader
{
    internal const string Untrimmed = "Plugins are found by reflection, and use what trimming may have taken out.";

    /// <summary>
    /// The plugins of an assembly: its public classes that derive from <see cref="RoutingPlugin"/>, by full name, each made with its constructor without
    /// parameters.
    /// </summary>
    /// <param name="path">The assembly file.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    /// <exception cref="PluginLoadException">The file is missing or no assembly, holds no plugin, needs newer contracts, or a plugin cannot be
    /// made.</exception>
    [RequiresUnreferencedCode(Untrimmed)]
    public static IReadOnlyList<RoutingPlugin> Load(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var full = Path.GetFullPath(path);
        RefuseNoAssembly(path, full);
        try
        {
            var assembly = new PluginContext(full).LoadFromAssemblyPath(full);
            RefuseNewer(path, assembly);
            var plugins = assembly
                .GetExportedTypes()
                .Where(type => type is { IsAbstract: false, IsGenericTypeDefinition: false } && type.IsSubclassOf(typeof(RoutingPlugin)))
                .OrderBy(type => type.FullName, StringComparer.Ordinal)
                .Select(type => Make(path, type))
                .ToList();
            return plugins.Count > 0
                ? plugins
                : throw new PluginLoadException(
                    $"'{path}' holds no plugin: no public class in it derives from {typeof(RoutingPlugin).FullName}; name the assembly that has one."
                );
        }
        catch (Exception fault)
            when (fault
                    is BadImageFormatException
                        or FileLoadException
                        or FileNotFoundException
                        or TypeLoadException
                        or ReflectionTypeLoadException
                        or MissingMethodException
                        or InvalidOperationException
            )
        {
            throw new PluginLoadException(
                $"'{path}' cannot be loaded: {Text(fault)}. Check that all its files lie beside it, and that it was built for this version.",
                fault
            );
        }
    }

    private static void RefuseNoAssembly(string path, string full)
    {
        if (Directory.Exists(full))
        {
            throw new PluginLoadException(
                $"'{path}' is a folder; name the assembly file of the plugin in it. Folders are never searched, because a plugin runs with your rights."
            );
        }

        if (!File.Exists(full))
        {
            throw new PluginLoadException($"there is no file '{path}' to load a plugin from; check the path.");
        }

        try
        {
            _ = AssemblyName.GetAssemblyName(full);
        }
        catch (Exception fault) when (fault is BadImageFormatException or FileLoadException)
        {
            throw new PluginLoadException($"'{path}' is no .NET assembly; name the plugin's own .dll file.", fault);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new PluginLoadException($"'{path}' cannot be read: {Text(fault)}. Check who may read the file.", fault);
        }
    }

    [RequiresUnreferencedCode(Untrimmed)]
    private static void RefuseNewer(string path, Assembly assembly)
    {
        var contracts = typeof(RoutingPlugin).Assembly.GetName();
        var wanted = Array.Find(assembly.GetReferencedAssemblies(), name => name.Name == contracts.Name);
        if (wanted?.Version is { } version && version > contracts.Version)
        {
            throw new PluginLoadException(
                $"'{path}' was built for {contracts.Name} {version}, and this program has {contracts.Version}; take a newer version of the "
                    + "program, or a plugin built for this one."
            );
        }
    }

    private static RoutingPlugin Make(string path, [DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicParameterlessConstructor)] Type type)
    {
        if (type.GetConstructor(Type.EmptyTypes) is not { } constructor)
        {
            throw new PluginLoadException(
                $"'{path}': the plugin {type.FullName} has no public constructor without parameters, so it cannot be made; ask who wrote it."
            );
        }

        try
        {
            var plugin = (RoutingPlugin)constructor.Invoke(null);
            return string.IsNullOrWhiteSpace(plugin.Info?.Id)
                ? throw new PluginLoadException($"'{path}': the plugin {type.FullName} gives no id; ask who wrote it.")
                : plugin;
        }
        catch (Exception fault) when (fault is not PluginLoadException)
        {
            var cause = fault is TargetInvocationException { InnerException: { } inner } ? inner : fault;
            throw new PluginLoadException(
                $"'{path}': the plugin {type.FullName} failed while it was made: {Text(cause)}. Leave it out, or ask who wrote it.",
                cause
            );
        }
    }

    private static string Text(Exception fault) =>
        (fault is ReflectionTypeLoadException { LoaderExceptions: [{ } first, ..] } ? first : fault).Message.TrimEnd('.');
}
