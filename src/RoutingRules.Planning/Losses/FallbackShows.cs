using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>The documents that assignments after a loss are made from.</summary>
internal sealed class FallbackShows(FallbackTask task, ResolvedShow show)
{
    /// <summary>The show as an assignment after the loss is to see it: what goes on is held, what is lost for good is not asked for.</summary>
    public Show Wanted()
    {
        var document = show.Document;
        var feeds = new List<Feed>(document.Feeds.Select(feed => feed with { Hold = true }));
        foreach (var feed in task.Demands.Where(demand => demand.Feed is not null).Select(demand => demand.Feed!).Distinct())
        {
            feeds[feed.Index] = document.Feeds[feed.Index] with { Hold = false, To = Pinned(document.Feeds[feed.Index], feed) };
        }

        var lines = new List<Line>(document.Lines.Select(line => line with { Hold = true }));
        foreach (var demand in task.Demands.Where(demand => demand.Line is not null))
        {
            var line = demand.Line!;
            var whole = lines[line.Index];
            lines[line.Index] = whole with
            {
                Hold = !task.SilencedOf(demand).Exists(delivery => task.Reason(delivery) is null),
                To = whole.To.Where((_, i) => line.Sinks[i].IsNone || !task.IsAtLost(line.Sinks[i])).ToValueList(),
            };
        }

        return document with
        {
            Feeds = feeds.ToValueList(),
            Lines = lines.ToValueList(),
        };
    }

    /// <summary>The show to go on from: what an attempt has placed is held there.</summary>
    public Show Settled(FallbackAttempt attempt)
    {
        var document = Wanted() with { Patch = attempt.Document.Patch };
        foreach (var demand in task.Demands.Where(attempt.IsPlaced))
        {
            document =
                demand.Feed is not null || attempt.IsElsewhere(demand)
                    ? ShowChanges.Pin(document, demand, attempt.PlaceOf(demand)!.Value)
                    : document with
                    {
                        Lines = document.Lines.Select((line, i) => i == demand.Line!.Index ? line with { Hold = true } : line).ToValueList(),
                    };
        }

        return document;
    }

    /// <summary>Entries of a harmed feed that go on are pinned where they are, so that the others may move.</summary>
    private ValueList<Destination> Pinned(Feed document, FeedNode feed)
    {
        var to = document.To.AsSpan().ToArray();
        for (var entry = 0; entry < to.Length; entry++)
        {
            var demand = show.Demands[feed.FirstDemand + entry];
            if (!demand.Existing.IsNone && !task.IsHarmed(demand))
            {
                to[entry] = new Destination { At = show.Graph.Address(demand.Existing, demand.Width) };
            }
        }

        return ValueList.Create<Destination>(to);
    }
}
