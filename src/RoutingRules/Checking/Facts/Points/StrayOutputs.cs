using System.Globalization;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Finds outputs that carry a source which no feed has there, and says how it got there.</summary>
internal static class StrayOutputs
{
    /// <summary>A route, a stream, a cable or a label touches the output.</summary>
    public const int Touched = 0;

    /// <summary>A factory route alone brings the source.</summary>
    public const int Leftover = 1;

    /// <summary>The slot that feeds the output is there for another device of the same stream, and the output cannot refuse it.</summary>
    public const int SharedBlock = 2;

    private sealed record Found(SinkRuns Outputs, int Sounding, int Shared);

    /// <summary>
    /// The outputs with what they carry; nothing when the show has no feeds. Outputs where a pinned feed is missing are left out, as the rules about
    /// feeds say what is there instead, and outputs that lead into somebody's ears with dangerous content, or to loudspeakers with talkback, click or comms,
    /// which have rules of their own.
    /// </summary>
    public static SinkRuns Find(RuleContext context) => Of(context).Outputs;

    /// <summary>How many outputs carry something, in a show that has feeds.</summary>
    public static int Sounding(RuleContext context) => Of(context).Sounding;

    /// <summary>How many of those take what a transmit slot sends and cannot refuse it.</summary>
    public static int Shared(RuleContext context) => Of(context).Shared;

    /// <summary>The route that brings the source there, else the stream, else the cable that leads on, else the device.</summary>
    public static string Pointer(RuleContext context, PointIndex output)
    {
        var stream = -1;
        foreach (var point in context.Upward(output))
        {
            if (context.Via(point) == HopKind.Route)
            {
                return string.Create(CultureInfo.InvariantCulture, $"/patch/routes/{context.ViaIndex(point)}");
            }

            stream = context.Via(point) == HopKind.Stream ? context.ViaIndex(point) : stream;
        }

        foreach (var next in context.Fed(output))
        {
            var point = new PointIndex(next);
            if (stream < 0 && context.Via(point) == HopKind.Cable)
            {
                return string.Create(CultureInfo.InvariantCulture, $"/rig/cables/{context.ViaIndex(point)}");
            }
        }

        return stream >= 0
            ? string.Create(CultureInfo.InvariantCulture, $"/patch/streams/{stream}")
            : string.Create(CultureInfo.InvariantCulture, $"/rig/devices/{context.DeviceOf(output).Index}");
    }

    private static Found Of(RuleContext context) => context.Shared(Collect);

    private static Found Collect(RuleContext context)
    {
        var found = new SinkRuns();
        if (context.Feeds.Count == 0)
        {
            return new Found(found, 0, 0);
        }

        var (sounding, shared) = (0, 0);
        var intentions = Intentions.Of(context);
        var senders = Senders(context);
        var ears = EarFeeds.Of(context);
        var privates = PrivateSounds.Of(context);
        foreach (var device in context.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind == PortKind.Output && i < group.Count; i++)
                {
                    var output = device.First(group) + i;
                    var origin = context.Origin(output);
                    if (origin.IsNone || origin == output)
                    {
                        continue;
                    }

                    sounding++;
                    shared += Slot(context, output).IsNone ? 0 : 1;
                    if (
                        !IsIntended(context, intentions, output)
                        && Judge(context, intentions, senders, output) is { } tag
                        && !ears.IsOnUnaskedWay(output)
                        && !privates.IsOnWay(output)
                    )
                    {
                        found.Add(
                            output,
                            origin,
                            tag == Touched && OtherDevice(context, intentions, output) is { IsNone: false } ? SharedBlock : tag,
                            device.Index
                        );
                    }
                }
            }
        }

        return new Found(found, sounding, shared);
    }

    /// <summary>The output of another device for which a route fills the slot that feeds a fixed output by the same stream; none when there is none.</summary>
    public static PointIndex OtherDevice(RuleContext context, Intentions intentions, PointIndex output)
    {
        var slot = Slot(context, output);
        if (slot.IsNone || context.Via(slot) != HopKind.Route)
        {
            return PointIndex.None;
        }

        foreach (var next in context.Fed(slot))
        {
            if (context.DeviceOf(new PointIndex(next)) != context.DeviceOf(output))
            {
                foreach (var point in FeedPlaces.Reached(context, new PointIndex(next)))
                {
                    if (intentions.IsPlaced(point, out var source) && context.IsFedBy(slot, source))
                    {
                        return point;
                    }
                }
            }
        }

        return PointIndex.None;
    }

    /// <summary>The transmit slot that feeds an output over a stream and a routing that nobody can change; none when there is no such slot.</summary>
    public static PointIndex Slot(RuleContext context, PointIndex output)
    {
        var receive = context.Upstream(output);
        return
            !receive.IsNone
            && context.Via(output) == HopKind.Fixed
            && context.Via(receive) == HopKind.Stream
            && context.RoutingBetween(receive, output) is { Mode: RoutingMode.Fixed, Clearable: false }
            ? context.Upstream(receive)
            : PointIndex.None;
    }

    private static bool[] Senders(RuleContext context)
    {
        var senders = new bool[context.Devices.Count];
        foreach (var feed in context.Feeds)
        {
            if (!feed.Source.IsNone)
            {
                senders[context.DeviceOf(feed.Source).Index] = true;
            }
        }

        return senders;
    }

    /// <summary>True when a feed has the source there: a point of the chain is where the feed is placed, and its source is further up.</summary>
    private static bool IsIntended(RuleContext context, Intentions intentions, PointIndex output)
    {
        foreach (var point in context.Upward(output))
        {
            if (intentions.IsPlaced(point, out var source) && context.IsFedBy(point, source))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Follows the chain of an output that no feed has; null when it is not for this rule to judge.</summary>
    private static int? Judge(RuleContext context, Intentions intentions, bool[] senders, PointIndex output)
    {
        var isPatched = false;
        var isSent = false;
        foreach (var point in context.Upward(output))
        {
            var kind = context.GroupOf(point).Kind;
            if (intentions.IsOfLine(point) || (point != output && kind == PortKind.Output) || intentions.IsFeedPin(point))
            {
                return null;
            }

            foreach (var (_, feed) in intentions.FeedsOf(point))
            {
                if (!intentions.IsServed(feed))
                {
                    return null;
                }
            }

            isPatched |= context.Via(point) is HopKind.Route or HopKind.Stream;
            isSent |= (kind == PortKind.Source || context.Upstream(point).IsNone) && senders[context.DeviceOf(point).Index];
        }

        if ((!isPatched && !isSent) || LeadsToLine(context, intentions, output))
        {
            return null;
        }

        return isPatched || intentions.IsCabled(output) || intentions.IsLabelled(output) ? Touched : Leftover;
    }

    /// <summary>True when the output brings a line to its channels; where the show lists no lines, when it brings anything to a channel.</summary>
    private static bool LeadsToLine(RuleContext context, Intentions intentions, PointIndex output)
    {
        if (context.Fed(output).IsEmpty)
        {
            return false;
        }

        foreach (var point in context.Downward(output))
        {
            if (intentions.IsOfLine(point) || (context.Lines.Count == 0 && context.GroupOf(point).Kind == PortKind.Sink))
            {
                return true;
            }
        }

        return false;
    }
}
