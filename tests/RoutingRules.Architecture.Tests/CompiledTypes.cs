using Mono.Cecil;

namespace RoutingRules.Architecture.Tests;

/// <summary>The types of an assembly and what each uses, read from what was compiled: signatures, attributes and code.</summary>
internal sealed class CompiledTypes
{
    private static readonly Dictionary<string, CompiledTypes> Known = [];

    private readonly List<Arrow> arrows = [];

    private CompiledTypes(ModuleDefinition module)
    {
        Assembly = module.Assembly.Name.Name;
        Types = [.. module.Types.Where(type => !type.Name.StartsWith('<') && type.Namespace.StartsWith("RoutingRules", StringComparison.Ordinal))];
        foreach (var type in Types)
        {
            var used = new HashSet<TypeReference>(TypeNames.Instance);
            new TypeWalk(used).Visit(type);
            arrows.AddRange(used.Where(other => other.FullName != type.FullName).Select(other => new Arrow(type.FullName, other.FullName, AssemblyOf(other))));
        }

        arrows.Sort((first, second) => string.CompareOrdinal(first.ToString(), second.ToString()));
    }

    public string Assembly { get; }

    public IReadOnlyList<TypeDefinition> Types { get; }

    public IReadOnlyList<Arrow> Arrows => arrows;

    /// <summary>The types of an assembly that lies beside the tests.</summary>
    public static CompiledTypes Of(string assembly)
    {
        lock (Known)
        {
            return Known.TryGetValue(assembly, out var known)
                ? known
                : Known[assembly] = new(ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, $"{assembly}.dll")));
        }
    }

    private string AssemblyOf(TypeReference type) => type.Scope is AssemblyNameReference other ? other.Name : Assembly;
}
