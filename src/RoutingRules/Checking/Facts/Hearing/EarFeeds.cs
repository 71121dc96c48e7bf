using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>Which feeds end in somebody's ears, whatever their role says, and what gets there although no feed means it.</summary>
internal sealed class EarFeeds(RuleContext context)
{
    private readonly Intentions intentions = Intentions.Of(context);
    private PointIndex?[]? ends;
    private List<PointIndex>? shared;
    private List<(PointIndex End, PointIndex Source)>? unasked;
    private PointSet? unaskedWays;
    private int? count;

    /// <summary>The one that all rules of a run share.</summary>
    public static EarFeeds Of(RuleContext context) => context.Shared(static asking => new EarFeeds(asking));

    /// <summary>Where the entry of a feed is placed, or else pinned; none when it is neither.</summary>
    public static PointIndex Place(RuleContext context, DemandNode demand) =>
        EarDemands.Place(demand, context, static (asking, at) => asking.Find(at, out var first) == ConnectionState.Connected ? first : PointIndex.None);

    /// <summary>
    /// The first point at which an entry of a feed is heard in somebody's ears: where it is placed, pinned, or bound to be placed. None when there is none.
    /// </summary>
    public PointIndex EndOf(DemandNode demand) =>
        context.Ears.All.Count == 0
            ? PointIndex.None
            : (ends ??= new PointIndex?[context.Demands.Count])[demand.Index] ??= EarDemands.EndOf(context.Ears, demand, Place(context, demand));

    /// <summary>
    /// True for a feed that is in-ear by its role, or for a role that may be and ends in somebody's ears at a place that it does not share with one that is.
    /// </summary>
    public bool IsInEar(FeedNode feed) => feed.Model.Role == FeedRole.InEar || (FeedRoles.MayBeForEars(feed.Model.Role) && Ends(feed));

    /// <summary>How many feeds are in-ear.</summary>
    public int Count => count ??= CountAll();

    /// <summary>The first point at which an entry is heard in somebody's ears although its role says that it is for others; none when there is none.</summary>
    public PointIndex MisplacedAt(DemandNode demand) =>
        demand.Feed is { } feed && !FeedRoles.MayBeForEars(feed.Model.Role) && EndOf(demand) is { IsNone: false } end && !IsShared(demand)
            ? end
            : PointIndex.None;

    /// <summary>The points that serve an in-ear feed and one of another role, which a rule of its own tells.</summary>
    public List<PointIndex> Shared => shared ??= FindShared();

    /// <summary>True when one of the points at which a feed is placed or pinned is shared.</summary>
    public bool IsShared(DemandNode demand)
    {
        var place = Shared.Count == 0 ? PointIndex.None : Place(context, demand);
        for (var position = 0; !place.IsNone && position < demand.Width; position++)
        {
            if (Shared.BinarySearch(place + position) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The dangerous source at a pinned in-ear feed that is missing there; none when there is none.</summary>
    public PointIndex DangerAt(DemandNode demand, out int position)
    {
        position = 0;
        if (demand is not { Feed: { } feed, IsPinned: true, Existing.IsNone: true } || !IsInEar(feed))
        {
            return PointIndex.None;
        }

        var place = Place(context, demand);
        for (; !place.IsNone && position < demand.Width; position++)
        {
            var point = place + position;
            var own = feed.Source.IsNone ? PointIndex.None : feed.Source + position;
            foreach (var way in SignalPaths.To(context, point))
            {
                if (!way.Contains(own) && !IsUnplugged(way) && Danger(way[^1], context.Ears.Contains(point)) is not null)
                {
                    return way[^1];
                }
            }
        }

        return PointIndex.None;
    }

    /// <summary>What a source is, in words, when it must not reach somebody's ears without a feed that asks for it; null when it may.</summary>
    /// <param name="source">The real source.</param>
    /// <param name="isAtEars">Whether it really gets there; if not, what a mix of another kind would do is left to other rules.</param>
    public string? Danger(PointIndex source, bool isAtEars)
    {
        FeedNode? named = null;
        var isMain = false;
        foreach (var (_, feed) in intentions.FeedsOf(source))
        {
            if (feed.Model.Role != FeedRole.Assistive && IsInEar(feed))
            {
                return null;
            }

            isMain |= feed.Model.Role == FeedRole.Main;
            named ??= feed;
        }

        return isMain ? "the main mix"
            : ForbiddenContent.IsPrivateBus(intentions, source) ? "talkback, click or comms"
            : context.GroupOf(source).Kind == PortKind.Input ? "an input without any mix"
            : !isAtEars ? null
            : named is not null ? $"the bus of '{named.DisplayName}' ({named.Model.Role})"
            : "which no feed names";
    }

    /// <summary>Points in somebody's ears that carry a dangerous source although no feed is placed or pinned on the way, in ascending order.</summary>
    public List<(PointIndex End, PointIndex Source)> Unasked()
    {
        if (unasked is null)
        {
            FindUnasked();
        }

        return unasked!;
    }

    /// <summary>True for a point from which what nobody asked for goes into somebody's ears.</summary>
    public bool IsOnUnaskedWay(PointIndex point) => Unasked().Count > 0 && unaskedWays!.Contains(point.Value);

    private int CountAll()
    {
        var all = 0;
        foreach (var feed in context.Feeds)
        {
            all += IsInEar(feed) ? 1 : 0;
        }

        return all;
    }

    private bool Ends(FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var demand = context.Demand(feed, entry);
            if (!EndOf(demand).IsNone && !IsShared(demand))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// True when a way begins at an input of the same device that has nothing in it and is wired on for good, as in an idle headphone amplifier.
    /// </summary>
    private bool IsUnplugged(List<PointIndex> way)
    {
        for (var i = 0; i < way.Count - 1; i++)
        {
            if (context.Via(way[i]) is not (HopKind.Through or HopKind.Fixed or HopKind.Factory))
            {
                return false;
            }
        }

        return context.GroupOf(way[^1]).Kind == PortKind.Input;
    }

    private void FindUnasked()
    {
        unasked = [];
        if (context.Ears.All.Count == 0)
        {
            return;
        }

        unaskedWays = new PointSet(context.PointCount);
        var claimed = Claimed(context);
        foreach (var end in context.Ears.All)
        {
            foreach (var way in IsClaimed(claimed, end) ? [] : SignalPaths.To(context, end))
            {
                if (!way.Exists(point => claimed.Contains(point.Value)) && !IsUnplugged(way) && Danger(way[^1], true) is not null)
                {
                    unasked.Add((end, way[^1]));
                    way.ForEach(point => unaskedWays.Add(point.Value));
                }
            }
        }
    }

    /// <summary>True when every way to a point passes one where a feed belongs, because they all pass it before any selector.</summary>
    private bool IsClaimed(PointSet claimed, PointIndex end)
    {
        foreach (var passed in context.Upward(end))
        {
            if (claimed.Contains(passed))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The points at which feeds are placed or pinned.</summary>
    public static PointSet Claimed(RuleContext context)
    {
        var claimed = new PointSet(context.PointCount);
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                claimed.Add(Place(context, demand), demand.Width);
            }
        }

        return claimed;
    }

    private List<PointIndex> FindShared()
    {
        var ofEars = new PointSet(context.PointCount);
        var ofOthers = new PointSet(context.PointCount);
        foreach (var (point, feed) in FeedPoints.Of(context))
        {
            (feed.Model.Role == FeedRole.InEar ? ofEars : ofOthers).Add(point.Value);
        }

        return ofEars.ToList().FindAll(ofOthers.Contains);
    }
}
