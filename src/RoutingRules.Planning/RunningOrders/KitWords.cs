namespace RoutingRules.Planning.RunningOrders;

/// <summary>What people write for things of the kit.</summary>
internal static class KitWords
{
    private static readonly char[] Between = [' ', '\t', '/', ',', '(', ')', '+', ':', ';'];

    /// <summary>Words that mean a direct box, in small letters.</summary>
    public static IReadOnlyList<string> DirectBox { get; } = ["di", "d.i.", "d.i", "direct", "di-box"];

    /// <summary>True for equipment that is a direct box.</summary>
    public static bool IsDirectBox(string equipment) =>
        equipment.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries).Any(word => DirectBox.Contains(word, StringComparer.Ordinal));
}
