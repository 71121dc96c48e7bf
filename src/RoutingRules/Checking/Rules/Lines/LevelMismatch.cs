using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports cables between connectors of unlike level or kind of signal.</summary>
/// <remarks>Silent where a profile names no level, and about levels the engine does not know.</remarks>
public sealed class LevelMismatch : Rule<CableNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6009",
            Name = "level-mismatch",
            Title = "Cable joins unlike levels",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Severities = [Severity.Error, Severity.Warning],
            Checks = "A cable joins an output and an input of one level; an error where loudspeaker level or a digital signal meets something else.",
            Why = "An amplifier's output destroys a line input; line level overloads a microphone input; AES3 in an analogue input is loud noise.",
            Remedy = "Do not plug it. Use the right output, an input of the same level, or a pad or converter made for it.",
            Source = "common practice, no source; +4 dBu and -10 dBV differ by 11.8 dB (computed)",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, CableNode subject)
    {
        if (!CableLevels.IsInPlace(context, subject))
        {
            context.LookedAt(0);
            return;
        }

        var from = context.GroupOf(subject.From);
        var to = context.GroupOf(subject.To);
        context.LookedAt(from.Model.Level is null || to.Model.Level is null ? 0 : 1);
        if (CableLevels.Judge(from, to) is not { } severity)
        {
            return;
        }

        context.ReportAs(
            severity,
            $"The cable from {subject.Model.From} ({from.Model.Level} level) goes into {subject.Model.To} ({to.Model.Level} level).",
            $"/rig/cables/{subject.Index}",
            Entity.Of("from", subject.Model.From),
            Entity.Of("to", subject.Model.To)
        );
    }
}
