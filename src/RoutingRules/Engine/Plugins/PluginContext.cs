using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Runtime.Loader;

namespace RoutingRules.Engine.Plugins;

/// <summary>Loads a plugin with the assemblies that lie beside it, and takes from the program what both must have in common.</summary>
[RequiresUnreferencedCode(PluginLoader.Untrimmed)]
internal sealed class PluginContext(string path) : AssemblyLoadContext(Path.GetFileNameWithoutExtension(path))
{
    /// <summary>Types of these pass between program and plugin, so there must be one of each.</summary>
    private static readonly string[] Shared = ["RoutingRules.Abstractions", "RoutingRules", "Microsoft.Extensions.DependencyInjection.Abstractions"];

    private readonly AssemblyDependencyResolver resolver = new(path);

    protected override Assembly? Load(AssemblyName assemblyName) =>
        !Shared.Contains(assemblyName.Name, StringComparer.OrdinalIgnoreCase) && resolver.ResolveAssemblyToPath(assemblyName) is { } found
            ? LoadFromAssemblyPath(found)
            : null;

    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } found ? LoadUnmanagedDllFromPath(found) : 0;
}
