using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Checking.Facts;

/// <summary>Turns of phrase that messages share.</summary>
internal static class Wording
{
    /// <summary>How many things a message lists before it says how many more there are.</summary>
    public const int Listed = 12;

    /// <summary>How many names a sentence lists before it only counts.</summary>
    public const int MaxListed = 4;

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

    /// <summary>The things in order: <c>'a', 'b' and 2 more</c>.</summary>
    public static string Names(IReadOnlyList<string> names, bool quoted = true)
    {
        var mark = quoted ? "'" : "";
        var shown = names.Count <= MaxListed ? names.Count : MaxListed - 1;
        var text = "";
        for (var i = 0; i < shown; i++)
        {
            var join =
                i == 0 ? ""
                : i == shown - 1 && shown == names.Count ? " and "
                : ", ";
            text += $"{join}{mark}{names[i]}{mark}";
        }

        return shown == names.Count ? text : string.Create(CultureInfo.InvariantCulture, $"{text} and {names.Count - shown} more");
    }

    /// <summary>What points of a kind are called, with an article.</summary>
    public static string Kind(PortKind kind) =>
        kind switch
        {
            PortKind.Source => "a bus or another internal source",
            PortKind.Sink => "a channel or another internal sink",
            PortKind.Input => "an input",
            PortKind.Output => "an output",
            PortKind.Transmit => "a transmit slot",
            PortKind.Receive => "a receive slot",
            _ => "a network jack",
        };

    /// <summary><c>is</c> or <c>are</c>, <c>carries</c> or <c>carry</c>: the verb that goes with a run.</summary>
    public static string Verb(PointRange run, string one, string several) => run.Width == 1 ? one : several;
}
