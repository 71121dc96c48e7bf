using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Finds the radio packs that somebody else wears from now on.</summary>
internal static class PackMoves
{
    /// <summary>
    /// One step for each pack with another wearer, in feed order; what it plays counts as touched, so that it is muted, in-ears first, and heard low before it
    /// is worn.
    /// </summary>
    /// <param name="shows">The two shows.</param>
    /// <param name="wearers">Who wore each pack last, before the first show.</param>
    /// <param name="pace">How long things take.</param>
    public static IEnumerable<PlannedMove> Of(ShowComparer shows, IReadOnlyDictionary<string, string> wearers, Pace pace)
    {
        var old = Feeds(shows.Before).ToLookup(feed => feed.Model.Pack!, StringComparer.Ordinal);
        foreach (var pack in Feeds(shows.After).GroupBy(feed => feed.Model.Pack!, StringComparer.Ordinal))
        {
            var worn = old[pack.Key].ToList();
            var last =
                worn.Count > 0 ? Names(worn)
                : wearers.TryGetValue(pack.Key, out var earlier) ? [earlier]
                : [];
            var news = pack.Where(feed => last.Count > 0 && !IsKnown(shows, worn, last, feed)).ToList();
            if (news.Count == 0)
            {
                continue;
            }

            var now = Wording.List([.. Names(news).Select(name => $"'{name}'")]);
            var places = worn.SelectMany(feed => Places(shows.Before, feed))
                .Concat(news.SelectMany(feed => Places(shows.After, feed)))
                .Distinct()
                .ToValueList();
            yield return new PlannedMove
            {
                Phase = ChangeoverPhase.Stage,
                Place = places.IsEmpty ? news[0].Model.Source.Device : places[^1].Device,
                Text = $"Pack {pack.Key} goes from {Wording.List([.. last.Select(name => $"'{name}'")])} to {now}: take it back, wipe it and label it {now}.",
                Hazards = ["It stays off until a technician has heard it, turned down."],
                Seconds = pace.SecondsToPlug,
                IsReadBack = false,
                OnOpening = $"Pack {pack.Key} is for {now} now: a technician hears it first, turned down, before it is handed over.",
                Plugs = places,
            };
        }
    }

    /// <summary>Who wears the pack of a feed, as far as the document says.</summary>
    public static string Wearer(Feed feed) => feed.Person ?? feed.Name ?? feed.Id.Value;

    private static IEnumerable<FeedNode> Feeds(ShowSide side) => side.Show.Feeds.Where(feed => !string.IsNullOrEmpty(feed.Model.Pack));

    private static List<string> Names(IEnumerable<FeedNode> feeds) => [.. feeds.Select(feed => Wearer(feed.Model)).Distinct(StringComparer.Ordinal)];

    /// <summary>True for who wore it before; where nobody is named, for the same feed.</summary>
    private static bool IsKnown(ShowComparer shows, List<FeedNode> worn, List<string> last, FeedNode feed) =>
        last.Contains(Wearer(feed.Model), StringComparer.Ordinal)
        || (feed.Model.Person is null && worn.Exists(old => old.Model.Person is null && shows.IsSame(Demand(shows.Before, old), Demand(shows.After, feed))));

    private static DemandNode? Demand(ShowSide side, FeedNode feed) => side.Show.Demands.FirstOrDefault(demand => demand.Feed == feed);

    /// <summary>Where a feed comes out, and all that its signal goes on to from there.</summary>
    private static IEnumerable<Point> Places(ShowSide side, FeedNode feed) =>
        from demand in side.Show.Demands
        where demand.Feed == feed && !demand.Existing.IsNone
        from i in Enumerable.Range(0, demand.Width)
        let at = demand.Existing + i
        from point in side.Graph.Carrying(at).Prepend(at)
        select side.Graph.Address(point);
}
