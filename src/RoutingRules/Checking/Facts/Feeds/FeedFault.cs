using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>A feed of which at least one entry does not arrive, or a run of such feeds with one cause.</summary>
internal sealed class FeedFault
{
    public required FeedNode Feed { get; init; }

    /// <summary>The entries that do not arrive at all, in order.</summary>
    public required List<FeedEntry> Missing { get; init; }

    /// <summary>The entries that arrive in any way, in order.</summary>
    public required List<FeedEntry> Arriving { get; init; }

    /// <summary>Why, each cause once, in order.</summary>
    public required List<MissingCause> Causes { get; init; }

    /// <summary>The pointer to the first entry that does not arrive.</summary>
    public string Pointer => $"/feeds/{Feed.Index}/to/{Missing[0].Demand.Entry}";

    /// <summary>The feed and, of several destinations, those it misses.</summary>
    public IEnumerable<Entity> Entities() =>
        Feed.Model.To.Count == 1
            ? [Entity.Of("feed", Feed.Model.Id)]
            : [Entity.Of("feed", Feed.Model.Id), .. Missing.Select(entry => Entity.Of("to", FeedPlaces.Describe(Feed.Model.To[entry.Demand.Entry])))];

    /// <summary>The places at which the feed is missing, in words.</summary>
    public string Places(string last)
    {
        var places = new List<string>();
        foreach (var entry in Missing)
        {
            places.Add(FeedPlaces.Describe(Feed.Model.To[entry.Demand.Entry]));
        }

        return Wording.List(places, last);
    }

    /// <summary>The places at which the feed arrives, in words.</summary>
    public string ArrivingPlaces(RuleContext context)
    {
        var places = new List<string>();
        foreach (var entry in Arriving)
        {
            places.Add(
                Feed.Model.To[entry.Demand.Entry].At is { } at ? at.ToString()
                : !entry.Demand.Existing.IsNone ? context.Address(entry.Demand.Existing, entry.Demand.Width).ToString()
                : FeedPlaces.Describe(Feed.Model.To[entry.Demand.Entry])
            );
        }

        return Wording.List(places);
    }
}
