namespace RoutingRules.Architecture.Tests;

/// <summary>Says which arrows point the wrong way.</summary>
internal static class Judge
{
    /// <summary>What is wrong with an arrow inside an assembly; null when it points to a room before its own, or stays in it.</summary>
    public static string? Inside(string assembly, Arrow arrow)
    {
        if (arrow.Assembly != assembly || Rooms.Of(assembly) is not { } rooms)
            return null;

        var (from, to) = (Rooms.Find(assembly, Arrow.NamespaceOf(arrow.From)), Rooms.Find(assembly, Arrow.NamespaceOf(arrow.To)));
        return from < 0 || to < 0 ? $"{arrow}: one of them stands in no room"
            : to > from ? $"{arrow}: {rooms[from]} comes before {rooms[to]}"
            : null;
    }

    /// <summary>What is wrong with an arrow between assemblies; null when it is allowed.</summary>
    public static string? Between(string assembly, Arrow arrow) =>
        arrow.Assembly == assembly || Rooms.Assemblies[assembly].Contains(arrow.Assembly) ? null : $"{arrow}: {assembly} may not use {arrow.Assembly}";

    /// <summary>What is wrong with an arrow between families of rules; null when there is none. What rules share stands with the facts.</summary>
    public static string? BetweenRules(Arrow arrow) => IsRule(arrow.From) && IsRule(arrow.To) ? $"{arrow}: a rule uses another rule" : null;

    private static bool IsRule(string type) => type.StartsWith("RoutingRules.Checking.Rules.", StringComparison.Ordinal);
}
