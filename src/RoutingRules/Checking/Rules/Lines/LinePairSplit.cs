using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports pair lines whose halves come from inputs that are not side by side, or of which one half is missing at a pair of channels.</summary>
/// <remarks>Swapped pairs and pairs that start on an even number are the business of the rules about pairs of feeds, which read lines too.</remarks>
public sealed class LinePairSplit : Rule<LineNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6011",
            Name = "line-pair-split",
            Title = "Pair line torn apart",
            Family = RuleFamily.Lines,
            Severity = Severity.Warning,
            Checks = "Both halves of a pair line enter at neighbouring inputs of one device and arrive at their channels.",
            Why = "Halves that enter two boxes arrive at different times and smear the picture; half a pair is a hole on one side.",
            Remedy = "Plug both halves side by side on one box, left on the odd input, and route both.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, LineNode subject)
    {
        if (subject.Width != 2)
        {
            context.LookedAt(0);
            return;
        }

        foreach (var sink in LineDelivery.Sinks(context, subject))
        {
            if (sink.State == EntryState.Split)
            {
                Report(
                    context,
                    subject,
                    sink,
                    $"The halves of the pair line '{subject.DisplayName}' are not neighbours: "
                        + $"{context.Address(sink.At)} carries {context.Address(sink.First)}, {context.Address(sink.At + 1)} carries "
                        + $"{context.Address(sink.Second)}."
                );
            }
            else if (sink.State == EntryState.Half)
            {
                var isFirst = !sink.First.IsNone;
                var empty = sink.At + (isFirst ? 1 : 0);
                if (LineFaults.Cause(CauseFinder.Of(context), empty) is { } cause)
                {
                    Report(
                        context,
                        subject,
                        sink,
                        $"Only half of the pair line '{subject.DisplayName}' arrives at {context.Address(sink.At, 2)}; {context.Address(empty)} "
                            + $"does not get it: {cause.Describe(context)}."
                    );
                }
            }
        }
    }

    private static void Report(RuleContext context, LineNode line, LineSink sink, string message) =>
        context.Report(message, $"/lines/{line.Index}/to/{sink.Entry}", Entity.Of("line", line.Model.Id), Entity.Of("points", context.Address(sink.At, 2)));
}
