using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Names of demands as people know them: the feed's with the entry when it has several, or the line's.</summary>
internal sealed class DemandNames
{
    private readonly Dictionary<string, (string Name, string Ends)> names = new(StringComparer.Ordinal);

    public DemandNames(Show show)
    {
        foreach (var feed in show.Feeds)
        {
            var name = PlainText.Show(feed.Name ?? feed.Id.Value);
            for (var i = 1; i <= feed.To.Count; i++)
            {
                var full = feed.To.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $"{name} ({i} of {feed.To.Count})") : name;
                names.TryAdd(string.Create(CultureInfo.InvariantCulture, $"{feed.Id}/{i}"), (full, $"from {feed.Source}"));
            }
        }

        foreach (var line in show.Lines)
        {
            names.TryAdd(line.Id.Value, (PlainText.Show(line.Name ?? line.Id.Value), $"to {string.Join(", ", line.To)}"));
        }
    }

    public string Of(string demand) => names.TryGetValue(demand, out var known) ? known.Name : demand;

    /// <summary>Where a feed comes from, or where a line goes to.</summary>
    public string SourceOrSinks(string demand) => names.TryGetValue(demand, out var known) ? known.Ends : "";
}
