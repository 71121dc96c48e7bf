using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports lines that do not arrive at one or more of their channels.</summary>
/// <remarks>
/// One finding for each cause; entities are the lines, in the order of the points where they are lost. Torn and swapped pairs have their own rules.
/// </remarks>
public sealed class LineNotPatched : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6001",
            Name = "line-not-patched",
            Title = "Line does not arrive",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Checks = "Every line arrives at every channel it names.",
            Why =
                "A microphone that reaches no channel is found at line check at best, and in the first song at worst; with two consoles one of "
                + "them may have it and the other not.",
            Remedy = "Follow the line from the input to the channel and complete the named place: the route, the stream or the input.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var line in context.Lines)
        {
            context.LookedAt(line.Model.To.Count);
        }

        foreach (var (run, causes) in LineFaults.Runs(context, LineFaults.Collect(context)))
        {
            var why = FeedFaults.Describe(context, causes);
            var message =
                run.Count == 1
                    ? One(context, run[0], why)
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{run.Count} lines {(run[0].Arriving.Count == 0 ? "do not arrive" : "arrive at only some of their channels")}: {why}. "
                            + $"Missing: {Names(context, run)}."
                    );
            context.Report(message, run[0].Pointer, [.. run.SelectMany(fault => fault.Entities(context))]);
        }
    }

    private static string One(RuleContext context, LineFault fault, string why) =>
        fault.Arriving.Count == 0
            ? $"Line '{fault.Line.DisplayName}' does not arrive at {fault.Places(context, fault.Missing, "or")}: {why}."
            : $"Line '{fault.Line.DisplayName}' arrives at {fault.Places(context, fault.Arriving, "and")}, but not at "
                + $"{fault.Places(context, fault.Missing, "or")}: {why}.";

    private static string Names(RuleContext context, List<LineFault> run) =>
        Wording.List(run.ConvertAll(fault => $"'{fault.Line.DisplayName}' at {fault.Places(context, fault.Missing, "and")}"));
}
