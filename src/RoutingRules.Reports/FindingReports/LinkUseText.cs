using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Result;

namespace RoutingRules.Reports.FindingReports;

/// <summary>How full links are, as a table.</summary>
internal static class LinkUseText
{
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
                use.MostBitsPerSecond is { } most
                    ? $"{LinkWords.Megabits(use.BitsPerSecond)} of {LinkWords.Megabits(most)} Mbit/s"
                    : $"{LinkWords.Megabits(use.BitsPerSecond)} Mbit/s"
            );
        }

        if (!isEmpty)
        {
            output.Write("\nHow full the links are: reserved of what streams may take in each direction\n");
            columns.WriteTo(output, "  ");
        }
    }
}
