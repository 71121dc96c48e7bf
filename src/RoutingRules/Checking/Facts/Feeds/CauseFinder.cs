using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Finds why an entry of a feed, or half of a pair, does not arrive.</summary>
internal sealed class CauseFinder
{
    /// <summary>How it is said that signal ends at other places.</summary>
    public const string OnlyReaches = "the signal only reaches ";

    private readonly RuleContext context;
    private readonly List<PointRange> brokenEnds = [];

    public CauseFinder(RuleContext context)
    {
        this.context = context;
        foreach (var route in context.Routes)
        {
            AddBroken(route.State, route.Model.From, route.Model.To);
        }

        foreach (var stream in context.Streams)
        {
            AddBroken(stream.State, stream.Model.From, null);
            foreach (var receiver in stream.Receivers)
            {
                AddBroken(stream.State != ConnectionState.Connected ? stream.State : receiver.State, stream.Model.From, receiver.Model.At);
            }
        }

        foreach (var cable in context.Cables)
        {
            AddBroken(cable.State, cable.Model.From, cable.Model.To);
        }

        foreach (var link in context.Links)
        {
            AddBroken(link.State, link.Model.From, link.Model.To);
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static CauseFinder Of(RuleContext context) => context.Shared(static asking => new CauseFinder(asking));

    /// <summary>Why a missing entry does not arrive; null when a reference, a loop or a doubled sink that other rules report explains it.</summary>
    public MissingCause? Find(FeedNode feed, FeedEntry entry)
    {
        var first = Find(feed, entry, 0);
        if (first is null || feed.Width == 1 || first.Kind == CauseKind.Said)
        {
            return first;
        }

        var second = Find(feed, entry, 1);
        return second is null ? null : MissingCause.Join(context, first, second) ?? first;
    }

    /// <summary>Why one position of an entry does not arrive; null when other rules explain it.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="position">0 for left or mono, 1 for right.</param>
    public MissingCause? Find(FeedNode feed, FeedEntry entry, int position)
    {
        var source = feed.Source + position;
        if (IsExplained(source))
        {
            return null;
        }

        // Where the pin is decided at an output further up, neighbours there are told together, whatever they are cabled to.
        var at = entry.Demand.Allowed.Count > 0 ? entry.Demand.Allowed[0] : entry.At;
        return entry.At.IsNone ? FromSource(feed, entry.Demand, source) : AtPoint(entry, at + position, source);
    }

    private MissingCause? AtPoint(FeedEntry entry, PointIndex point, PointIndex source)
    {
        if (context.IsLooping(point))
        {
            return null;
        }

        if (context.IsFedBy(point, source))
        {
            var other = entry.Demand.Allowed.Count == 0 ? null : context.DemandAt(entry.Demand.Allowed[0]);
            return Said(
                other is null
                    ? $"{context.Address(point)} is fed in another way"
                    : $"{context.Address(point)} carries it, but counts for '{other.DisplayName}' already"
            );
        }

        return AtSink(point);
    }

    /// <summary>True when other rules say why a source does not get on: a connection that names it is broken, it lost a sink, or it runs in a loop.</summary>
    public bool IsExplained(PointIndex source) => IsMentioned(source) || IsLosing(source) || context.IsLooping(source);

    /// <summary>Why a point does not carry what it should: what it carries instead, or where its chain ends; null when other rules explain it.</summary>
    public MissingCause? AtSink(PointIndex point)
    {
        if (context.IsLooping(point))
        {
            return null;
        }

        if (context.Origin(point) is { IsNone: false } origin)
        {
            return IsWiredTo(point, origin)
                ? new MissingCause { Kind = CauseKind.InputUncabled, First = origin }
                : new MissingCause
                {
                    Kind = CauseKind.OtherSource,
                    First = point,
                    Other = origin,
                };
        }

        var end = point;
        foreach (var next in context.Upward(point))
        {
            end = next;
        }

        var group = context.GroupOf(end);
        if (IsMentioned(end) || IsJackMentioned(end, group))
        {
            return null;
        }

        var kind =
            context.Via(end) == HopKind.Cleared ? CauseKind.SinkCleared
            : group.Kind == PortKind.Receive ? (group.IsCarrier ? CauseKind.JackUnlinked : CauseKind.SlotUnfed)
            : group.Kind == PortKind.Input ? CauseKind.InputUncabled
            : CauseKind.SinkUnrouted;
        return kind == CauseKind.SinkUnrouted && !context.ProfileProblems(context.DeviceOf(end)).IsEmpty ? null : new MissingCause { Kind = kind, First = end };
    }

    private MissingCause? FromSource(FeedNode feed, DemandNode demand, PointIndex source)
    {
        if (demand.Allowed.Count == 0 && demand.EvenRuns.Count == 0)
        {
            return Said(NoOutput(feed.Model.To[demand.Entry], feed.Width));
        }

        var ends = new List<PointIndex>();
        var isOnlySlots = true;
        foreach (var point in FeedPlaces.Reached(context, source))
        {
            if (FeedPlaces.Allows(demand, point) && context.DemandAt(point) is { } other)
            {
                return Said($"{context.Address(point)} carries it, but counts for '{other.DisplayName}' already");
            }

            if (context.Fed(point).IsEmpty)
            {
                var isSlot = context.GroupOf(point).Kind == PortKind.Transmit;
                if (IsMentioned(point))
                {
                    return null;
                }

                if (isOnlySlots && !isSlot)
                {
                    ends.Clear();
                    isOnlySlots = false;
                }

                if (isOnlySlots == isSlot)
                {
                    ends.Add(point);
                }
            }
        }

        return ends.Count switch
        {
            0 => new MissingCause { Kind = CauseKind.SourceUnused, First = source },
            1 => new MissingCause { Kind = isOnlySlots ? CauseKind.SlotUnsent : CauseKind.OtherPlace, First = ends[0] },
            _ => Said((isOnlySlots ? "no stream takes " : OnlyReaches) + Wording.List(ends.ConvertAll(end => context.Address(end).ToString()))),
        };
    }

    private string NoOutput(Destination to, int width)
    {
        var place = FeedPlaces.Describe(to);
        if (to.Devices.IsEmpty && !FeedPlaces.HasDevice(context, to.Zones))
        {
            return $"no device stands in {place}";
        }

        var outputs = width == 1 ? "line output" : "two line outputs side by side";
        return to.Devices.Count == 1 && to.Zones.IsEmpty ? $"{place} has no {outputs}" : $"no device of {place} has {(width == 1 ? "a " : "")}{outputs}";
    }

    /// <summary>True when an input leads to a point by nothing that a patch decides, so that only a cable can bring the feed there.</summary>
    private bool IsWiredTo(PointIndex point, PointIndex origin)
    {
        foreach (var passed in context.Upward(point))
        {
            if (passed == origin)
            {
                break;
            }

            if (context.Via(passed) is not (HopKind.Through or HopKind.Cable))
            {
                return false;
            }
        }

        return context.GroupOf(origin).Kind == PortKind.Input;
    }

    private static MissingCause Said(string text) => new() { Kind = CauseKind.Said, Text = text };

    private void AddBroken(ConnectionState state, PointRange? from, PointRange? to)
    {
        if (state != ConnectionState.Connected)
        {
            brokenEnds.AddRange(from is null ? [] : [from.Value]);
            brokenEnds.AddRange(to is null ? [] : [to.Value]);
        }
    }

    /// <summary>True when a route, stream or cable that does not connect names the point.</summary>
    public bool IsMentioned(PointIndex point) => brokenEnds.Count > 0 && IsMentioned(context.Address(point));

    private bool IsMentioned(Point address)
    {
        foreach (var end in brokenEnds)
        {
            if (end.Device == address.Device && end.Group == address.Group && end.First <= address.Number && address.Number <= end.Last)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when the jack that carries a slot is named by a link that does not connect.</summary>
    private bool IsJackMentioned(PointIndex slot, GroupNode group) =>
        group.Model.Carrier is { } jack && IsMentioned(new Point(context.DeviceOf(slot).Id, jack.Group, jack.First));

    /// <summary>True when the source lost a sink to another claim on it.</summary>
    private bool IsLosing(PointIndex source)
    {
        foreach (var conflict in context.Conflicts)
        {
            if (!conflict.OtherFrom.IsNone && context.IsFedBy(conflict.OtherFrom, source))
            {
                return true;
            }
        }

        return false;
    }
}
