using System.Globalization;
using RoutingRules.Assignment;

namespace RoutingRules.Reporting;

/// <summary>How full links are, in words and as a table.</summary>
internal static class LinkUseText
{
    /// <summary>One direction of a link that has no room left.</summary>
    public static string Full(LinkUse use) =>
        $"link '{use.Link}' from {use.From} to {use.To} is full: {Megabits(use.BitsPerSecond)} of the {Megabits(use.MostBitsPerSecond ?? 0)} Mbit/s that streams may take";

    /// <summary>Writes the table; nothing when no stream passes a link.</summary>
    public static void Write(IEnumerable<LinkUse> table, TextWriter output)
    {
        var columns = new TextColumns();
        var isEmpty = true;
        foreach (var use in table)
        {
            isEmpty = false;
            columns.Add(
                use.Link.Value,
                $"{use.From} to {use.To}",
                string.Create(CultureInfo.InvariantCulture, $"{use.Streams} {(use.Streams == 1 ? "stream" : "streams")}"),
                use.MostBitsPerSecond is { } most ? $"{Megabits(use.BitsPerSecond)} of {Megabits(most)} Mbit/s" : $"{Megabits(use.BitsPerSecond)} Mbit/s");
        }

        if (!isEmpty)
        {
            output.Write("\nHow full the links are: reserved of what streams may take in each direction\n");
            columns.WriteTo(output, "  ");
        }
    }

    private static string Megabits(long bits) => string.Create(CultureInfo.InvariantCulture, $"{bits / 1_000_000.0:0.##}");
}
