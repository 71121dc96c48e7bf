using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Reports talkback, click and comms where an audience hears them.</summary>
/// <remarks>
/// One finding for each main, broadcast, assistive or evacuation feed: its own bus is one that a talkback, click or comms feed names, or such a
/// bus arrives where it is pinned. The rules about single feeds leave the second case out.
/// </remarks>
public sealed class ContentForbidden : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } = new()
    {
        Id = "RR3011",
        Name = "content-forbidden",
        Title = "Talkback, click or comms where the audience hears it",
        Family = RuleFamily.Feeds,
        Severity = Severity.Error,
        Checks = "No bus of a talkback, click or comms feed is the source of a main, broadcast, assistive or evacuation feed, or arrives where one is pinned.",
        Why = "What the crew says to each other, or a click track, over the loudspeakers or on air cannot be taken back; over evacuation loudspeakers it can hurt people.",
        Remedy = "Mute that output now, clear the route that brings the bus there, then patch the right bus and check it at low level.",
        Source = "common practice, no source",
        Fixability = Fixability.Manual,
        Reads = ModelSlices.Devices | ModelSlices.Routes | ModelSlices.Feeds,
    };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        if (subject.Source.IsNone || !FeedRoles.IsForAudience(subject.Model.Role))
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
                    Report(context, subject, $"/feeds/{subject.Index}/source", $"takes its signal from {context.Address(subject.Source + position)}, the bus of", other, subject.Source + position);
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
                Report(context, subject, $"/feeds/{subject.Index}/to/{entry}", $"is pinned to {at}, which carries {context.Address(bus)} of", intentions.FeedsOf(bus)[0].Feed, bus);
                return;
            }
        }
    }

    private static void Report(RuleContext context, FeedNode feed, string pointer, string how, FeedNode other, PointIndex bus) =>
        context.Report(
            $"Feed '{feed.DisplayName}' ({feed.Model.Role}) {how} '{other.DisplayName}' ({other.Model.Role}).",
            pointer,
            Entity.Of("feed", feed.Model.Id),
            Entity.Of("source", context.Address(bus)));
}
