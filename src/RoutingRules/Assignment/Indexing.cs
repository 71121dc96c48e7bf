#if !NET9_0_OR_GREATER

namespace RoutingRules.Assignment;

/// <summary>What later frameworks bring with them.</summary>
internal static class Indexing
{
    /// <summary>Items with their positions.</summary>
    public static IEnumerable<(int Index, T Item)> Index<T>(this IEnumerable<T> items) => items.Select(static (item, index) => (index, item));
}
#endif
