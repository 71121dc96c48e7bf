using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Reports in-ear feeds of which nobody says that a limiter is in the way.</summary>
public sealed class InEarLimiterMissing : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } = new()
    {
        Id = "RR9001",
        Name = "in-ear-limiter-missing",
        Title = "In-ear feed without a limiter",
        Family = RuleFamily.Hearing,
        Severity = Severity.Error,
        Checks = "Every in-ear feed declares a limiter; a warning where nothing is said, an error where the show says that there is none.",
        Why = "An earpiece has no distance: a feedback, a wrong patch or a pulled connector at full level can harm hearing in a moment. NIOSH allows about a minute and a half a day at 110 dBA.",
        Remedy = "Put a limiter into the path, set it before anybody puts the earpieces in, and write it down. Sound exposure limits and local rules apply; this check does not replace them.",
        Source = "NIOSH: 480 / 2^((L-85)/3) minutes; a limiter in each in-ear path: common practice, no source",
        Fixability = Fixability.Manual,
        Reads = ModelSlices.Feeds,
    };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        if (subject.Model.Role != FeedRole.InEar || subject.Model.Limiter == true)
        {
            return;
        }

        var person = subject.Model.Person is { } name && !subject.DisplayName.Contains(name, StringComparison.OrdinalIgnoreCase) ? $" of {name}" : "";
        context.ReportAs(
            subject.Model.Limiter is null ? Severity.Warning : Severity.Error,
            subject.Model.Limiter is null
                ? $"Nothing is said about a limiter in in-ear feed '{subject.DisplayName}'{person}."
                : $"In-ear feed '{subject.DisplayName}'{person} has no limiter.",
            subject.Model.Limiter is null ? $"/feeds/{subject.Index}" : $"/feeds/{subject.Index}/limiter",
            Entity.Of("feed", subject.Model.Id));
    }
}
