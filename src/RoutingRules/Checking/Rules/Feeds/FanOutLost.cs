using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports feeds that arrive at some of their places and not at others.</summary>
/// <remarks>One finding for each cause; entities are the feeds, in the order of the points where they are lost.</remarks>
public sealed class FanOutLost : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3003",
            Name = "fan-out-lost",
            Title = "Feed arrives at only some of its places",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks = "A feed with several destinations that arrives at one of them arrives at all of them.",
            Why = "One working destination makes the feed look sound at the desk, while another part of the room or the stage hears nothing.",
            Remedy = "Complete the named place, or take the destination out of the feed if it is no longer wanted.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(FeedFaults.Judged(context, 2));
        var faults = FeedFaults.Collect(context).FindAll(fault => fault.Arriving.Count > 0);
        foreach (var (run, causes) in FeedFaults.Runs(context, faults))
        {
            var why = IsOnlyThere(context, run, causes) ? "the signal goes nowhere else" : FeedFaults.Describe(context, causes);
            var message =
                run.Count == 1
                    ? $"Feed '{run[0].Feed.DisplayName}' arrives at {run[0].ArrivingPlaces(context)}, but not at {run[0].Places("or")}: {why}."
                    : string.Create(CultureInfo.InvariantCulture, $"{run.Count} feeds arrive at only some of their places: {why}. Missing: {Names(run)}.");
            context.Report(message, run[0].Pointer, [.. FeedFaults.Entities(run)]);
        }
    }

    /// <summary>True when all that is to say is that the signal goes where it was just said to arrive.</summary>
    private static bool IsOnlyThere(RuleContext context, List<FeedFault> run, List<MissingCause> causes) =>
        run.Count == 1 && causes is [{ } cause] && cause.Describe(context) == CauseFinder.OnlyReaches + run[0].ArrivingPlaces(context);

    private static string Names(List<FeedFault> run) => Wording.List(run.ConvertAll(fault => $"'{fault.Feed.DisplayName}' at {fault.Places("and")}"));
}
