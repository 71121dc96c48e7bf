using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Reports cables between connectors of unlike level or kind of signal.</summary>
/// <remarks>Silent where a profile names no level, and about levels the engine does not know.</remarks>
public sealed class LevelMismatch : Rule<CableNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } = new()
    {
        Id = "RR6009",
        Name = "level-mismatch",
        Title = "Cable joins unlike levels",
        Family = RuleFamily.Lines,
        Severity = Severity.Warning,
        Checks = "A cable joins an output and an input of one level; an error where loudspeaker level or a digital signal meets something else.",
        Why = "An amplifier's output destroys a line input; line level overloads a microphone input; AES3 in an analogue input is loud noise.",
        Remedy = "Do not plug it. Use the right output, an input of the same level, or a pad or converter made for it.",
        Source = "common practice, no source; +4 dBu and -10 dBV differ by 11.8 dB (computed)",
        Fixability = Fixability.Manual,
        Reads = ModelSlices.Devices | ModelSlices.Routes | ModelSlices.Cables,
    };

    /// <inheritdoc/>
    public override void Check(RuleContext context, CableNode subject)
    {
        if (!IsInPlace(context, subject) || Judge(context.GroupOf(subject.From), context.GroupOf(subject.To)) is not { } severity)
        {
            return;
        }

        context.ReportAs(
            severity,
            $"The cable from {subject.Model.From} ({context.GroupOf(subject.From).Model.Level} level) goes into {subject.Model.To} ({context.GroupOf(subject.To).Model.Level} level).",
            $"/rig/cables/{subject.Index}",
            Entity.Of("from", subject.Model.From),
            Entity.Of("to", subject.Model.To));
    }

    /// <summary>True when the cable connects and is the one that counts at an input: a second one there is told as a doubled sink.</summary>
    internal static bool IsInPlace(RuleContext context, CableNode cable)
    {
        for (var position = 0; cable.State == ConnectionState.Connected && position < cable.Model.To.Width; position++)
        {
            if (context.Via(cable.To + position) == HopKind.Cable && context.ViaIndex(cable.To + position) == cable.Index)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How bad the meeting of two groups is; null when it is none, or not known to be.</summary>
    internal static Severity? Judge(GroupNode from, GroupNode to)
    {
        if (from.Model.Level is not { } left || to.Model.Level is not { } right || left == right || !IsKnown(left) || !IsKnown(right))
        {
            return null;
        }

        return IsApart(left) || IsApart(right) ? Severity.Error : Severity.Warning;
    }

    private static bool IsApart(SignalLevel level) => level == SignalLevel.Speaker || level == SignalLevel.Aes3;

    private static bool IsKnown(SignalLevel level) =>
        IsApart(level) || level == SignalLevel.Mic || level == SignalLevel.Line || level == SignalLevel.Headphone;
}
