using Mono.Cecil;

namespace RoutingRules.Architecture.Tests;

/// <summary>Types are the same when they have the same name in the same place.</summary>
internal sealed class TypeNames : IEqualityComparer<TypeReference>
{
    public static TypeNames Instance { get; } = new();

    public bool Equals(TypeReference? x, TypeReference? y) => x?.FullName == y?.FullName && x?.Scope?.Name == y?.Scope?.Name;

    public int GetHashCode(TypeReference obj) => StringComparer.Ordinal.GetHashCode(obj.FullName);
}
