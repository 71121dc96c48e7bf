using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports paths through processing or a passive split of which only one end is connected.</summary>
/// <remarks>
/// Loudspeaker outputs are exempt, as what hangs on them is seldom written down, and so are link outputs that only pass on what a loudspeaker or amplifier
/// plays itself, the last of a row among them, and ends that feeds, lines, broken connections or doubled
/// sinks speak of. An input without a cable counts as an end of its own in a passive split, where the stage plugs in.
/// </remarks>
public sealed class ThroughHalfPatched : Rule<DeviceNode>
{
    private const int NoReturn = 0;
    private const int NoSend = 1;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2012",
            Name = "through-half-patched",
            Title = "Send without return, or return without send",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Checks = "What is connected to the way in of a processor, an insert or a split is connected at its way out too, and the other way round.",
            Why = "An insert with only one side plugged mutes the channel it sits in; a pair with one leg through the box and one past it loses its balance.",
            Remedy = "Complete the other side, or take the plugged side out and bypass the path.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        context.LookedAt(0);
        SinkRuns? found = null;
        foreach (var path in subject.Profile.Through)
        {
            if (
                path.Kind == ThroughKind.Select
                || subject.Group(path.From) is not { } from
                || subject.Group(path.To) is not { } to
                || to.Model.Level == SignalLevel.Speaker
            )
            {
                continue;
            }

            for (var i = 0; i < from.Count && i < to.Count; i++)
            {
                context.LookedAt();
                var enter = subject.First(from) + i;
                var leave = subject.First(to) + i;
                if (
                    Fault(context, Intentions.Of(context), path, enter, leave) is { } tag
                    && !CauseFinder.Of(context).IsMentioned(enter)
                    && !CauseFinder.Of(context).IsMentioned(leave)
                )
                {
                    (found ??= new SinkRuns()).Add(tag == NoReturn ? leave : enter, tag == NoReturn ? enter : leave, tag, subject.Index);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            Report(context, run);
        }
    }

    private static int? Fault(RuleContext context, Intentions intentions, ThroughEntry path, PointIndex enter, PointIndex leave)
    {
        // What a device joins by itself is no plug that somebody forgot.
        if (
            context.Via(enter) is HopKind.Fixed or HopKind.Factory or HopKind.Through
            || context.Upstream(leave) != enter
            || IsSpokenOf(intentions, enter)
            || IsSpokenOf(intentions, leave)
            || context.DemandAt(enter) is not null
        )
        {
            return null;
        }

        var isFed = !context.Upstream(enter).IsNone;
        var isTaken = !context.Fed(leave).IsEmpty || IsFedOtherwise(context, enter, leave);
        if (isFed == isTaken || (!isFed && !IsPlugged(context, leave)) || (isFed && IsLinkOutput(context.DeviceOf(leave), path)))
        {
            return null;
        }

        return isFed ? NoReturn
            : path.Kind == ThroughKind.Process && !LeadsToPin(context, intentions, leave) ? NoSend
            : null;
    }

    private static bool IsLinkOutput(DeviceNode device, ThroughEntry path) =>
        device.Profile.Kind == DeviceKind.Loudspeaker || (device.Profile.Kind == DeviceKind.Amplifier && path.Kind == ThroughKind.Passive);

    /// <summary>True when a cable or a route of the patch takes what leaves.</summary>
    private static bool IsPlugged(RuleContext context, PointIndex leave)
    {
        foreach (var next in context.Fed(leave))
        {
            if (context.Via(new PointIndex(next)) is HopKind.Cable or HopKind.Route)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when another path takes what enters, so that this leg is free to stay empty.</summary>
    private static bool IsFedOtherwise(RuleContext context, PointIndex enter, PointIndex leave)
    {
        foreach (var next in context.Fed(enter))
        {
            if (next != leave.Value && (context.Via(new PointIndex(next)) != HopKind.Through || !context.Fed(new PointIndex(next)).IsEmpty))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsSpokenOf(Intentions intentions, PointIndex point) =>
        intentions.IsFeedPin(point) || intentions.IsNamed(point) || intentions.IsOfLine(point) || intentions.IsMarked(point);

    /// <summary>True when a feed is pinned where the path leads, so that the rules about feeds say that nothing comes.</summary>
    private static bool LeadsToPin(RuleContext context, Intentions intentions, PointIndex leave)
    {
        foreach (var point in context.IsLooping(leave) ? [] : FeedPlaces.Reached(context, leave))
        {
            if (intentions.IsNamed(point))
            {
                return true;
            }
        }

        return false;
    }

    private static void Report(RuleContext context, SinkRun run)
    {
        var empty = context.Address(run.Sink, run.Width);
        var plugged = context.Address(run.Source, run.Width);
        var message =
            run.Tag == NoReturn
                ? $"Signal goes in at {plugged}, but nothing takes it from {empty}."
                : $"{plugged} {Wording.Verb(plugged, "leads", "lead")} on, but nothing is plugged into {empty}.";
        context.Report(message, $"/rig/devices/{context.DeviceOf(run.Sink).Index}", Entity.Of("open", empty), Entity.Of("connected", plugged));
    }
}
