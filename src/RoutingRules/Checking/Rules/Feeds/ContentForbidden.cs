using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports talkback, click and comms where an audience hears them.</summary>
/// <remarks>
/// One finding for each feed for an audience, such as main, fill, broadcast or evacuation: its own bus is one that a talkback, click or comms feed names,
/// or such a bus arrives where it is pinned. One more for each run of loudspeakers at which such a bus sounds where no feed has it. The rules about single
/// feeds and stray outputs leave the last two out.
/// </remarks>
public sealed class ContentForbidden : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3011",
            Name = "content-forbidden",
            Title = "Talkback, click or comms where the audience hears it",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks =
                "No bus of a talkback, click or comms feed is the source of a feed for loudspeakers of the house, broadcast, assistive listening "
                + "or evacuation, or arrives where one is pinned; nor does it sound, over any cable, receive slot or factory route, at a loudspeaker "
                + "where no feed has it.",
            Why =
                "What the crew says to each other, or a click track, over the loudspeakers or on air cannot be taken back; over evacuation "
                + "loudspeakers it can hurt people.",
            Remedy = "Mute that output now, clear the route that brings the bus there, then patch the right bus and check it at low level.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        var isForAudience = FeedRoles.IsForAudience(subject.Model.Role);
        context.LookedAt(isForAudience || FeedRoles.IsPrivate(subject.Model.Role) ? 1 : 0);
        ReportSounds(context, subject);
        if (subject.Source.IsNone || !isForAudience)
        {
            return;
        }

        var intentions = Intentions.Of(context);
        for (var position = 0; position < subject.Width; position++)
        {
            foreach (var (_, other) in intentions.FeedsOf(subject.Source + position))
            {
                if (FeedRoles.IsPrivate(other.Model.Role))
                {
                    Report(
                        context,
                        subject,
                        $"/feeds/{subject.Index}/source",
                        $"takes its signal from {context.Address(subject.Source + position)}, the bus of",
                        other,
                        subject.Source + position
                    );
                    return;
                }
            }
        }

        for (var entry = 0; entry < subject.Model.To.Count; entry++)
        {
            var demand = context.Demand(subject, entry);
            if (ForbiddenContent.At(context, intentions, demand) is { IsNone: false } bus)
            {
                var at = context.Address(demand.Allowed[0], demand.Width);
                Report(
                    context,
                    subject,
                    $"/feeds/{subject.Index}/to/{entry}",
                    $"is pinned to {at}, which carries {context.Address(bus)} of",
                    intentions.FeedsOf(bus)[0].Feed,
                    bus
                );
                return;
            }
        }
    }

    private static void ReportSounds(RuleContext context, FeedNode feed)
    {
        if (!FeedRoles.IsPrivate(feed.Model.Role))
        {
            return;
        }

        var runs = new SinkRuns();
        foreach (var (sounding, end, bus) in PrivateSounds.Of(context).Found)
        {
            if (sounding == feed)
            {
                runs.Add(end, bus, 0, 0);
            }
        }

        foreach (var run in runs.IsEmpty ? [] : runs.Merge(context))
        {
            var loudspeakers = context.Address(run.Sink, run.Width);
            context.Report(
                $"Feed '{feed.DisplayName}' ({feed.Model.Role}) sounds at the {(run.Width == 1 ? "loudspeaker" : "loudspeakers")} of "
                    + $"{loudspeakers}, where no feed has it.",
                StrayOutputs.Pointer(context, run.Sink),
                Entity.Of("feed", feed.Model.Id),
                Entity.Of("loudspeaker", loudspeakers),
                Entity.Of("source", context.Address(run.Source, run.Width))
            );
        }
    }

    private static void Report(RuleContext context, FeedNode feed, string pointer, string how, FeedNode other, PointIndex bus) =>
        context.Report(
            $"Feed '{feed.DisplayName}' ({feed.Model.Role}) {how} '{other.DisplayName}' ({other.Model.Role}).",
            pointer,
            Entity.Of("feed", feed.Model.Id),
            Entity.Of("source", context.Address(bus))
        );
}
