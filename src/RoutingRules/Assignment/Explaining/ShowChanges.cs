using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Makes shows with one thing changed.</summary>
internal static class ShowChanges
{
    /// <summary>With some points no longer reserved.</summary>
    public static Show Free(Show show, PointRange at)
    {
        var reserved = new List<ReservedPoints>();
        foreach (var entry in show.Rig.Reserved)
        {
            if (entry.At.Device != at.Device || entry.At.Group != at.Group || entry.At.Last < at.First || entry.At.First > at.Last)
            {
                reserved.Add(entry);
                continue;
            }

            if (entry.At.First < at.First)
            {
                reserved.Add(entry with { At = new PointRange(at.Device, at.Group, entry.At.First, at.First - 1) });
            }

            if (entry.At.Last > at.Last)
            {
                reserved.Add(entry with { At = new PointRange(at.Device, at.Group, at.Last + 1, entry.At.Last) });
            }
        }

        return show with
        {
            Rig = show.Rig with { Reserved = reserved.ToValueList() },
        };
    }

    /// <summary>With a demand that may move.</summary>
    public static Show Release(Show show, DemandNode demand) =>
        demand.Feed is { } feed
            ? show with
            {
                Feeds = Replace(show.Feeds, feed.Index, feed.Model with { Hold = false }),
            }
            : show with
            {
                Lines = Replace(show.Lines, demand.Line!.Index, demand.Line.Model with { Hold = false }),
            };

    /// <summary>With everything held where it is.</summary>
    public static Show HoldAll(Show show) =>
        show with
        {
            Feeds = show.Feeds.Select(feed => feed with { Hold = true }).ToValueList(),
            Lines = show.Lines.Select(line => line with { Hold = true }).ToValueList(),
        };

    /// <summary>With only that held where it is which another reading of the show holds.</summary>
    public static Show HoldOnly(Show show, ResolvedShow holding)
    {
        var feeds = holding.Demands.Where(demand => demand is { IsHeld: true, Feed: not null }).Select(demand => demand.Feed!.Index).ToHashSet();
        var lines = holding.Demands.Where(demand => demand is { IsHeld: true, Line: not null }).Select(demand => demand.Line!.Index).ToHashSet();
        return show with
        {
            Feeds = show.Feeds.Select((feed, at) => feeds.Contains(at) ? feed : feed with { Hold = false }).ToValueList(),
            Lines = show.Lines.Select((line, at) => lines.Contains(at) ? line : line with { Hold = false }).ToValueList(),
        };
    }

    /// <summary>With a pinned demand that may go anywhere on the device it is pinned to; null for a signal born where it is.</summary>
    public static Show? Unpin(Show show, DemandNode demand)
    {
        if (demand.Feed is { } feed)
        {
            var at = feed.Model.To[demand.Entry].At;
            return at is null ? null : WithDestination(show, demand, new Destination { Devices = [at.Value.Device] });
        }

        return demand.Line!.Model.From is { At.Count: 1 } origin ? WithOrigin(show, demand, new LineOrigin { Devices = [origin.At[0].Device] }) : null;
    }

    /// <summary>With a demand that names its points.</summary>
    public static Show Pin(Show show, DemandNode demand, PointRange at) =>
        demand.Feed is not null ? WithDestination(show, demand, new Destination { At = at }) : WithOrigin(show, demand, new LineOrigin { At = [at] });

    /// <summary>With one more zone for a demand; null when it is allowed already.</summary>
    public static Show? Allow(Show show, DemandNode demand, Id<Zone> zone)
    {
        if (demand.Feed is { } feed)
        {
            var to = feed.Model.To[demand.Entry];
            return to.Zones.Contains(zone) ? null : WithDestination(show, demand, to with { Zones = to.Zones.Append(zone).ToValueList() });
        }

        var origin = demand.Line!.Model.From;
        return origin.Zones.Contains(zone) ? null : WithOrigin(show, demand, origin with { Zones = origin.Zones.Append(zone).ToValueList() });
    }

    private static Show WithDestination(Show show, DemandNode demand, Destination to)
    {
        var feed = show.Feeds[demand.Feed!.Index];
        return show with { Feeds = Replace(show.Feeds, demand.Feed.Index, feed with { To = Replace(feed.To, demand.Entry, to) }) };
    }

    private static Show WithOrigin(Show show, DemandNode demand, LineOrigin origin) =>
        show with
        {
            Lines = Replace(show.Lines, demand.Line!.Index, show.Lines[demand.Line.Index] with { From = origin }),
        };

    /// <summary>A list with another element at one place.</summary>
    public static ValueList<T> Replace<T>(ValueList<T> list, int at, T item)
    {
        var items = list.AsSpan().ToArray();
        items[at] = item;
        return ValueList.Create<T>(items);
    }
}
