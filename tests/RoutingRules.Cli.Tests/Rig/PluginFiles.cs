using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using RoutingRules.Plugins;

namespace RoutingRules.Cli.Tests.Rig;

/// <summary>Assemblies to load plugins from: the built ones, and faulty ones made for a test.</summary>
internal static class PluginFiles
{
    /// <summary>The plugin that others start from.</summary>
    public static string Template => Built("RoutingRules.Template");

    /// <summary>The strategy that has a native library.</summary>
    public static string CpSat => Built("RoutingRules.Strategies.CpSat");

    /// <summary>A plugin whose constructor throws.</summary>
    public static void WriteThrowing(string path)
    {
        var assembly = new PersistedAssemblyBuilder(new AssemblyName("Throwing"), typeof(object).Assembly);
        var type = assembly.DefineDynamicModule("Throwing").DefineType("Throwing.Faulty", TypeAttributes.Public | TypeAttributes.Class, typeof(RoutingPlugin));
        Throw(type.DefineConstructor(MethodAttributes.Public, CallingConventions.Standard, Type.EmptyTypes).GetILGenerator());
        var info = typeof(RoutingPlugin).GetProperty(nameof(RoutingPlugin.Info))!.GetMethod!;
        Throw(
            type.DefineMethod(info.Name, MethodAttributes.Public | MethodAttributes.Virtual | MethodAttributes.SpecialName, info.ReturnType, Type.EmptyTypes)
                .GetILGenerator()
        );
        Throw(
            type.DefineMethod(nameof(RoutingPlugin.Register), MethodAttributes.Public | MethodAttributes.Virtual, typeof(void), [typeof(PluginRegistry)])
                .GetILGenerator()
        );
        type.CreateType();
        assembly.Save(path);
    }

    /// <summary>An assembly that asks for contracts of version 9.</summary>
    public static void WriteNewer(string path)
    {
        var metadata = new MetadataBuilder();
        metadata.AddModule(0, metadata.GetOrAddString("Newer.dll"), metadata.GetOrAddGuid(new Guid("6f4cf4a1-0c3b-4d3e-9f0e-0d6a2f6b7c11")), default, default);
        metadata.AddAssembly(metadata.GetOrAddString("Newer"), new Version(1, 0, 0, 0), default, default, default, AssemblyHashAlgorithm.None);
        metadata.AddAssemblyReference(metadata.GetOrAddString("RoutingRules.Abstractions"), new Version(9, 0, 0, 0), default, default, default, default);
        metadata.AddTypeDefinition(
            default,
            default,
            metadata.GetOrAddString("<Module>"),
            default,
            MetadataTokens.FieldDefinitionHandle(1),
            MetadataTokens.MethodDefinitionHandle(1)
        );
        var image = new BlobBuilder();
        new ManagedPEBuilder(new PEHeaderBuilder(imageCharacteristics: Characteristics.Dll), new MetadataRootBuilder(metadata), new BlobBuilder()).Serialize(
            image
        );
        File.WriteAllBytes(path, image.ToArray());
    }

    private static void Throw(ILGenerator code)
    {
        code.Emit(OpCodes.Ldstr, "broken on purpose");
        code.Emit(OpCodes.Newobj, typeof(InvalidOperationException).GetConstructor([typeof(string)])!);
        code.Emit(OpCodes.Throw);
    }

    private static string Built(string project)
    {
        var output = Path.GetRelativePath(Repository.At("tests", "RoutingRules.Cli.Tests"), Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));
        return Repository.At("plugins", project, output, project + ".dll");
    }
}
