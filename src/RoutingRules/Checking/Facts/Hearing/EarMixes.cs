using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>Whose ears hear whose mix, where the two are not the same.</summary>
internal sealed class EarMixes
{
    private readonly RuleContext context;
    private readonly EarFeeds ears;
    private readonly Intentions intentions;
    private readonly HashSet<DemandNode> told = [];

    private EarMixes(RuleContext context)
    {
        this.context = context;
        ears = EarFeeds.Of(context);
        intentions = Intentions.Of(context);
        if (context.Ears.All.Count == 0)
        {
            return;
        }

        var feeds = new List<FeedNode>();
        foreach (var feed in context.Feeds)
        {
            if (ears.IsInEar(feed))
            {
                feeds.Add(feed);
            }
        }

        foreach (var feed in feeds)
        {
            AtPins(feed);
        }

        AtPacks(feeds);
    }

    /// <summary>A listener, the other mix that is heard, and the run where it is; whether a pin says so, or the packs alone.</summary>
    public sealed record Hearing(FeedNode Listener, FeedNode Mix, PointIndex At, int Width, bool IsPinned);

    /// <summary>The one that all rules of a run share.</summary>
    public static EarMixes Of(RuleContext context) => context.Shared(static asking => new EarMixes(asking));

    /// <summary>Who hears what, in the order of feeds.</summary>
    public List<Hearing> Heard { get; } = [];

    /// <summary>True when somebody else's mix explains why a pin is not served.</summary>
    public bool IsTold(DemandNode demand) => told.Contains(demand);

    private void AtPins(FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var demand = context.Demand(feed, entry);
            var place = EarFeeds.Place(context, demand);
            if (!demand.IsPinned || !demand.Existing.IsNone || place.IsNone || IsDisplaced(place, demand.Width) || !ears.DangerAt(demand, out _).IsNone)
            {
                continue;
            }

            var mixes = new FeedNode?[demand.Width];
            for (var position = 0; position < demand.Width; position++)
            {
                mixes[position] = context.Ears.Contains(place + position) ? MixAt(feed, place + position) : null;
            }

            for (var position = 0; position < demand.Width; position++)
            {
                if (mixes[position] is { } mix)
                {
                    var isBoth = position == 0 && demand.Width == 2 && mixes[1] == mix;
                    Heard.Add(new Hearing(feed, mix, Written(demand, place) + position, isBoth ? 2 : 1, true));
                    told.Add(demand);
                    position += isBoth ? 1 : 0;
                }
            }
        }
    }

    /// <summary>The pin as written, which is what is read at the rack, where that is in the ears; else where it is decided.</summary>
    private PointIndex Written(DemandNode demand, PointIndex place) =>
        demand.Feed!.Model.To[demand.Entry].At is { } at
        && at.Width == demand.Width
        && context.Find(at, out var first) == ConnectionState.Connected
        && context.Ears.IsEnd(first)
            ? first
            : place;

    private bool IsDisplaced(PointIndex place, int width)
    {
        var displaced = Displacements.OfFeeds(context);
        return displaced.IsMember(place) && displaced.IsMember(place + (width - 1));
    }

    /// <summary>Another in-ear feed whose bus gets to a point; of several the first by id. Null when the feed's own bus does, or none.</summary>
    private FeedNode? MixAt(FeedNode feed, PointIndex point)
    {
        FeedNode? other = null;
        foreach (var way in SignalPaths.To(context, point))
        {
            foreach (var passed in way)
            {
                foreach (var (_, mix) in intentions.FeedsOf(passed))
                {
                    if (mix == feed)
                    {
                        return null;
                    }

                    other = ears.IsInEar(mix) && (other is null || mix.Model.Id.CompareTo(other.Model.Id) < 0) ? mix : other;
                }
            }
        }

        return other;
    }

    /// <summary>Mixes that land on each other's packs, all round: a rack that is simply filled in another order names nobody.</summary>
    private void AtPacks(List<FeedNode> feeds)
    {
        Dictionary<FeedNode, SortedDictionary<PointIndex, FeedNode>>? wrong = null;
        foreach (var feed in feeds)
        {
            if (Landed(feed, feeds) is { } landed)
            {
                (wrong ??= []).Add(feed, landed);
            }
        }

        if (wrong is not null)
        {
            AddPacks(feeds, wrong);
        }
    }

    private void AddPacks(List<FeedNode> feeds, Dictionary<FeedNode, SortedDictionary<PointIndex, FeedNode>> wrong)
    {
        while (feeds.Find(feed => wrong.ContainsKey(feed) && !IsClosed(feed, wrong)) is { } open)
        {
            wrong.Remove(open);
        }

        foreach (var feed in feeds)
        {
            AddRuns(feed, wrong.GetValueOrDefault(feed) ?? []);
        }
    }

    private static bool IsClosed(FeedNode feed, Dictionary<FeedNode, SortedDictionary<PointIndex, FeedNode>> wrong) =>
        wrong[feed].Values.All(wrong.ContainsKey) && wrong.Any(other => other.Key != feed && other.Value.ContainsValue(feed));

    /// <summary>
    /// The ends of a mix that the panel marks with the pack of another feed, when the rack has its own and it is not there; null when there are none.
    /// </summary>
    private SortedDictionary<PointIndex, FeedNode>? Landed(FeedNode feed, List<FeedNode> feeds)
    {
        SortedDictionary<PointIndex, FeedNode>? landed = null;
        for (var entry = 0; Pack(feed) is { } pack && entry < feed.Model.To.Count; entry++)
        {
            var demand = context.Demand(feed, entry);
            for (var position = 0; !demand.Existing.IsNone && position < demand.Width; position++)
            {
                foreach (var end in context.Ears.Behind(demand.Existing + position))
                {
                    var mark = EarWords.Pack(context, end);
                    if (mark is not null && Same(mark, pack))
                    {
                        return null;
                    }

                    if (mark is not null && HasMark(end, pack) && ListenerOf(mark, feed, feeds) is { } listener && !EarListeners.MayShare(feed, listener))
                    {
                        (landed ??= []).TryAdd(end, listener);
                    }
                }
            }
        }

        return landed;
    }

    private void AddRuns(FeedNode mix, SortedDictionary<PointIndex, FeedNode> wrong)
    {
        foreach (var (end, listener) in wrong)
        {
            var last = Heard.Count - 1;
            if (last >= 0 && Heard[last].Mix == mix && Heard[last].Listener == listener && Heard[last].At + Heard[last].Width == end)
            {
                Heard[last] = Heard[last] with { Width = Heard[last].Width + 1 };
            }
            else if (!Heard.Exists(one => one.Listener == listener && one.Mix == mix && one.At == end))
            {
                Heard.Add(new Hearing(listener, mix, end, 1, false));
            }
        }
    }

    private static FeedNode? ListenerOf(string mark, FeedNode feed, List<FeedNode> feeds) =>
        feeds.Find(other => other != feed && Pack(other) is { } its && Same(its, mark));

    private bool HasMark(PointIndex end, string pack)
    {
        foreach (var mark in context.GroupOf(end).Model.PanelLabels)
        {
            if (Same(EarWords.Pack(mark), pack))
            {
                return true;
            }
        }

        return false;
    }

    private static string? Pack(FeedNode feed) => string.IsNullOrWhiteSpace(feed.Model.Pack) ? null : feed.Model.Pack.Trim();

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
