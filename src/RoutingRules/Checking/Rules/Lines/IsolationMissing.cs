using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports split legs and feeds for recording and broadcast that leave without a transformer.</summary>
/// <remarks>
/// Of the legs of a passive split one may be direct. A connection counts as isolated when either end is, and as harmless when both devices hang on one supply.
/// A feed is told where it leaves at an analogue output. One finding for each split, and one for each feed.
/// </remarks>
public sealed class IsolationMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6015",
            Name = "isolation-missing",
            Title = "Split leg, recording or broadcast without isolation",
            Family = RuleFamily.Lines,
            Severity = Severity.Note,
            Checks =
                "Of the legs of a passive split all but one are isolated, and so are analogue outputs from which recording and broadcast are "
                + "fed, unless both ends hang on one supply.",
            Why = "Two grounds meet in the shield: it hums, and a fault of one system travels into the other.",
            Remedy =
                "Put an isolating transformer into the leg or the send. Never lift the protective earth of a device: mains and earthing belong "
                + "to licensed people under local code.",
            Source = "common practice, no source; shields and earth: AES48, IEC 60364 (from memory)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var device in context.Devices)
        {
            CheckSplit(context, device);
        }

        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role == FeedRole.Record || feed.Model.Role == FeedRole.Broadcast)
            {
                CheckFeed(context, feed);
            }
        }
    }

    private static void CheckSplit(RuleContext context, DeviceNode device)
    {
        List<GroupNode>? legs = null;
        foreach (var path in device.Profile.Through)
        {
            if (path.Kind == ThroughKind.Passive && device.Group(path.To) is { } leg && (device.Profile.Kind == DeviceKind.Split || path.Phantom))
            {
                (legs ??= []).Add(leg);
            }
        }

        if (legs is null || legs.Count < 2)
        {
            return;
        }

        var direct = new List<string>();
        var plugged = 0;
        foreach (var leg in legs)
        {
            var (isPlugged, isOpen) = Leg(context, device, leg);
            plugged += isPlugged ? 1 : 0;
            if (isOpen)
            {
                direct.Add($"{device.Id}/{leg.Id}");
            }
        }

        context.LookedAt(plugged > 1 ? 1 : 0);
        if (direct.Count > 1)
        {
            context.Report(
                $"The legs {Wording.List(direct)} of split '{device.DisplayName}' go on without isolation; one direct leg at most.",
                $"/rig/devices/{device.Index}",
                [Entity.Of("split", device.Id), .. direct.ConvertAll(leg => Entity.Of("leg", leg))]
            );
        }
    }

    /// <summary>Whether a leg is plugged in, and whether any of its ways is without a transformer.</summary>
    private static (bool IsPlugged, bool IsOpen) Leg(RuleContext context, DeviceNode device, GroupNode leg)
    {
        var isPlugged = false;
        for (var i = 0; i < leg.Count; i++)
        {
            var output = device.First(leg) + i;
            foreach (var next in context.Fed(output))
            {
                isPlugged = true;
                if (!IsHarmless(context, output, new PointIndex(next)))
                {
                    return (true, true);
                }
            }
        }

        return (isPlugged, false);
    }

    private static void CheckFeed(RuleContext context, FeedNode feed)
    {
        var open = new List<string>();
        var judged = 0;
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var at = context.Demand(feed, entry).Existing;
            if (at.IsNone || !IsAnalogue(context.GroupOf(at)))
            {
                continue;
            }

            judged++;
            var isHarmless = !context.Fed(at).IsEmpty;
            foreach (var next in context.Fed(at))
            {
                isHarmless &= IsHarmless(context, at, new PointIndex(next));
            }

            if (!isHarmless && !context.GroupOf(at).Model.Isolated)
            {
                open.Add(context.Address(at, feed.Width).ToString());
            }
        }

        context.LookedAt(judged > 0 ? 1 : 0);
        if (open.Count > 0)
        {
            context.Report(
                $"'{feed.DisplayName}' leaves at {Wording.List(open)} "
                    + $"for {(feed.Model.Role == FeedRole.Record ? "recording" : "broadcast")} without isolation.",
                $"/feeds/{feed.Index}",
                [Entity.Of("feed", feed.Model.Id), .. open.ConvertAll(at => Entity.Of("at", at))]
            );
        }
    }

    private static bool IsHarmless(RuleContext context, PointIndex output, PointIndex input) =>
        context.GroupOf(output).Model.Isolated
        || context.GroupOf(input).Model.Isolated
        || Supplies.Common([context.DeviceOf(output), context.DeviceOf(input)]) is not null;

    private static bool IsAnalogue(GroupNode group) =>
        group is { Kind: PortKind.Output, Model.Level: { } level } && (level == SignalLevel.Mic || level == SignalLevel.Line || level == SignalLevel.Headphone);
}
