using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports feeds for somebody's ears of which nobody says that a limiter is in the way: by their role, or by where they end.</summary>
public sealed class InEarLimiterMissing : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9001",
            Name = "in-ear-limiter-missing",
            Title = "In-ear feed without a limiter",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "Every feed that is in-ear, or ends at a transmitter rack, a headphone output or a point marked in-ear whatever its role, declares "
                + "a limiter; a warning where nothing is said and no ears are in sight, else an error.",
            Why =
                "An earpiece has no distance: a feedback, a wrong patch or a pulled connector at full level can harm hearing in a moment. NIOSH "
                + "allows about a minute and a half a day at 110 dBA.",
            Remedy =
                "Put a limiter into the path, set it before anybody puts the earpieces in, and write it down. Sound exposure limits and local "
                + "rules apply; this check does not replace them.",
            Source = "NIOSH: 480 / 2^((L-85)/3) minutes; a limiter in each in-ear path: common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        if (subject.Model.Limiter == true || !FeedRoles.MayBeForEars(subject.Model.Role))
        {
            context.LookedAt(FeedRoles.MayBeForEars(subject.Model.Role) ? 1 : 0);
            return;
        }

        var end = End(context, subject);
        var isInEar = subject.Model.Role == FeedRole.InEar;
        if (end.IsNone && !isInEar)
        {
            context.LookedAt(0);
            return;
        }

        var person = subject.Model.Person is { } name && !subject.DisplayName.Contains(name, StringComparison.OrdinalIgnoreCase) ? $" of {name}" : "";
        var feed = isInEar ? $"in-ear feed '{subject.DisplayName}'{person}" : $"feed '{subject.DisplayName}'{person} ({subject.Model.Role})";
        var ears = end.IsNone ? "" : $", which goes into somebody's ears at {EarWords.At(context, end, 1)}";
        context.ReportAs(
            subject.Model.Limiter is null && end.IsNone ? Severity.Warning : Severity.Error,
            subject.Model.Limiter is null
                ? $"Nothing is said about a limiter in {feed}{ears}."
                : $"{feed[..1].ToUpperInvariant()}{feed[1..]}{ears}{(end.IsNone ? "" : ",")} has no limiter.",
            subject.Model.Limiter is null ? $"/feeds/{subject.Index}" : $"/feeds/{subject.Index}/limiter",
            Entity.Of("feed", subject.Model.Id)
        );
    }

    /// <summary>The first point at which a feed is heard in somebody's ears, what an in-ear feed shares aside; none when there is none.</summary>
    private static PointIndex End(RuleContext context, FeedNode feed)
    {
        var ears = EarFeeds.Of(context);
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var demand = context.Demand(feed, entry);
            if (ears.EndOf(demand) is { IsNone: false } end && (feed.Model.Role == FeedRole.InEar || !ears.IsShared(demand)))
            {
                return end;
            }
        }

        return PointIndex.None;
    }
}
