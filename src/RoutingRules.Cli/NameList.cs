namespace RoutingRules.Cli;

/// <summary>Lists of names for messages.</summary>
internal static class NameList
{
    private const int Max = 20;

    /// <summary>The names with commas between, the rest of a long list counted.</summary>
    public static string Of(IEnumerable<string> names)
    {
        var list = names.ToList();
        return list.Count switch
        {
            0 => "none",
            <= Max => string.Join(", ", list),
            _ => FormattableString.Invariant($"{string.Join(", ", list.Take(Max))} and {list.Count - Max} more"),
        };
    }
}
