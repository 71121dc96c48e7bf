using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Why something does not arrive, at a run of points.</summary>
internal sealed record MissingCause
{
    public required CauseKind Kind { get; init; }

    /// <summary>First point of the place where signal is lost; none when only words say it.</summary>
    public PointIndex First { get; init; }

    public int Width { get; init; } = 1;

    /// <summary>For <see cref="CauseKind.OtherSource"/>: what the first point carries instead.</summary>
    public PointIndex Other { get; init; }

    /// <summary>For <see cref="CauseKind.Said"/>: the words.</summary>
    public string Text { get; init; } = "";

    private int Offset => Other.IsNone ? 0 : Other.Value - First.Value;

    /// <summary>The two as one when they are one fault at neighbouring points or at the same ones; else null.</summary>
    public static MissingCause? Join(RuleContext context, MissingCause earlier, MissingCause later)
    {
        if (earlier.Kind != later.Kind || !string.Equals(earlier.Text, later.Text, StringComparison.Ordinal) || later.Offset != earlier.Offset)
        {
            return null;
        }

        if (earlier.First.IsNone || later.First.IsNone)
        {
            return earlier.First == later.First ? earlier : null;
        }

        if (
            later.First < earlier.First
            || later.First > earlier.First + earlier.Width
            || context.DeviceOf(earlier.First) != context.DeviceOf(later.First)
            || context.GroupOf(earlier.First) != context.GroupOf(later.First)
        )
        {
            return null;
        }

        return earlier with
        {
            Width = Math.Max(earlier.Width, later.First.Value - earlier.First.Value + later.Width),
        };
    }

    public static int Compare(MissingCause x, MissingCause y)
    {
        var order = x.Kind.CompareTo(y.Kind);
        order = order != 0 ? order : x.Offset.CompareTo(y.Offset);
        order = order != 0 ? order : x.First.CompareTo(y.First);
        return order != 0 ? order : string.CompareOrdinal(x.Text, y.Text);
    }

    /// <summary>The cause as the second half of a sentence.</summary>
    public string Describe(RuleContext context)
    {
        var run = First.IsNone ? "" : context.Address(First, Width).ToString();
        var isOne = Width == 1;
        return Kind switch
        {
            CauseKind.SourceUnused => isOne ? $"{run} is routed nowhere" : $"{run} are routed nowhere",
            CauseKind.SlotUnsent => $"no stream takes {run}",
            CauseKind.SlotUnfed => $"no stream reaches {run}",
            CauseKind.JackUnlinked => $"no link brings signal to {run}",
            CauseKind.InputUncabled => $"no output is cabled to {run}",
            CauseKind.SinkUnrouted => $"nothing is routed to {run}",
            CauseKind.SinkCleared => isOne ? $"{run} is set to nothing" : $"{run} are set to nothing",
            CauseKind.OtherSource => $"{run} {(isOne ? "carries" : "carry")} {context.Address(Other, Width)} instead",
            CauseKind.OtherPlace => CauseFinder.OnlyReaches + run,
            _ => Text,
        };
    }
}
