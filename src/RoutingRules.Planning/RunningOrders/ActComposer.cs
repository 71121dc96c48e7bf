using RoutingRules.Model;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Makes an act a show of its own.</summary>
internal static class ActComposer
{
    /// <summary>The show of an act.</summary>
    /// <param name="order">The running order.</param>
    /// <param name="act">The act.</param>
    /// <param name="patch">The patch that stands when it comes.</param>
    public static Show Compose(RunningOrder order, Act act, Patch patch)
    {
        var locked = order.Locked.ToHashSet();
        var without = act.Without.Where(id => !locked.Contains(new Id<Feed>(id))).ToHashSet(StringComparer.Ordinal);
        return new Show
        {
            Title = $"{order.Title}: {act.DisplayName}",
            Venue = order.Venue,
            Date = act.Date ?? order.Date,
            Revision = order.Revision,
            Rig = order.Rig,
            Feeds = Overlay(order.Feeds, act.Feeds.Where(feed => !locked.Contains(feed.Id)), static feed => feed.Id.Value, without)
                .Select(feed => locked.Contains(feed.Id) ? feed with { Hold = true } : feed)
                .ToValueList(),
            Lines = Overlay(order.Lines, act.Lines, static line => line.Id.Value, without).ToValueList(),
            Patch = act.Patch ?? patch,
        };
    }

    /// <summary>What the house has with what the act puts in its place, then what the act adds.</summary>
    private static IEnumerable<T> Overlay<T>(ValueList<T> house, IEnumerable<T> own, Func<T, string> id, HashSet<string> without)
    {
        var mine = new Dictionary<string, T>(StringComparer.Ordinal);
        var added = new List<T>();
        var known = house.Select(id).ToHashSet(StringComparer.Ordinal);
        foreach (var element in own)
        {
            if (!known.Contains(id(element)))
            {
                added.Add(element);
            }
            else
            {
                mine[id(element)] = element;
            }
        }

        return house
            .Where(element => !without.Contains(id(element)) || mine.ContainsKey(id(element)))
            .Select(element => mine.GetValueOrDefault(id(element), element))
            .Concat(added);
    }
}
