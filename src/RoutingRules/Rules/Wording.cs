using System.Globalization;

namespace RoutingRules.Rules;

/// <summary>Turns of phrase that messages share.</summary>
internal static class Wording
{
    /// <summary>How many things a message lists before it says how many more there are.</summary>
    public const int Listed = 12;

    /// <summary>The items with commas and a last word between the last two; beyond <see cref="Listed"/> only their number.</summary>
    public static string List(IReadOnlyList<string> items, string last = "and")
    {
        if (items.Count > Listed)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", items.Take(Listed))} and {items.Count - Listed} more");
        }

        return items.Count switch
        {
            0 => "",
            1 => items[0],
            _ => $"{string.Join(", ", items.Take(items.Count - 1))} {last} {items[^1]}",
        };
    }
}
