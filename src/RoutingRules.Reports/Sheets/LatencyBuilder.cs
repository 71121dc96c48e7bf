using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Resolving;
using RoutingRules.Tracing;

namespace RoutingRules.Reports.Sheets;

/// <summary>Sums up how late signals arrive.</summary>
internal sealed class LatencyBuilder(SheetFacts facts, SheetSelection selection)
{
    private const string LinesName = "lines";

    private readonly List<(string What, List<(double? Value, string At)> Found)> kinds = [];

    public ValueList<SheetLatency> Build()
    {
        foreach (var feed in facts.Show.Feeds.Where(selection.Concerns))
        {
            var what = EarDemands.IsInEar(facts.Show, feed) ? FeedRole.InEar : feed.Model.Role;
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                Add(what.Value, facts.Show.Demands[feed.FirstDemand + entry].Existing, feed.DisplayName);
            }
        }

        foreach (var line in facts.Show.Lines.Where(selection.Concerns))
        {
            for (var sink = 0; sink < line.Sinks.Count; sink++)
            {
                Add(LinesName, facts.Reaches(line, sink, 0) ? line.Sinks[sink] : PointIndex.None, line.DisplayName);
            }
        }

        return kinds.Select(Sum).ToValueList();
    }

    private void Add(string what, PointIndex at, string name)
    {
        if (at.IsNone)
        {
            return;
        }

        var kind = kinds.FindIndex(kind => string.Equals(kind.What, what, StringComparison.Ordinal));
        if (kind < 0)
        {
            kind = kinds.Count;
            kinds.Add((what, []));
        }

        kinds[kind].Found.Add((Tracer.Trace(facts.Show, at).KnownLatencyMilliseconds, $"{name} at {facts.Place(at)}"));
    }

    private static SheetLatency Sum((string What, List<(double? Value, string At)> Found) kind)
    {
        var known = kind.Found.Where(found => found.Value is not null).OrderBy(found => found.Value).ToArray();
        return new SheetLatency
        {
            What = kind.What,
            Count = kind.Found.Count,
            Unknown = kind.Found.Count - known.Length,
            Shortest = known.Length == 0 ? null : known[0].Value,
            ShortestAt = known.Length == 0 ? null : known[0].At,
            Longest = known.Length == 0 ? null : known[^1].Value,
            LongestAt = known.Length == 0 ? null : known[^1].At,
        };
    }
}
