using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports feeds that arrive nowhere.</summary>
/// <remarks>One finding for each cause; entities are the feeds, in the order of the points where they are lost.</remarks>
public sealed class FeedNotDelivered : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3001",
            Name = "feed-not-delivered",
            Title = "Feed does not arrive",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks = "Every feed arrives at one or more of the places it names.",
            Why = "A mix that reaches no connector is silence for whoever depends on it, found at line check or in front of the audience.",
            Remedy = "Follow the path from the bus to the connector and complete the named place: the route, the stream or the cable.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(FeedFaults.Judged(context, 1));
        var faults = FeedFaults.Collect(context).FindAll(fault => fault.Arriving.Count == 0);
        foreach (var (run, causes) in FeedFaults.Runs(context, faults))
        {
            var why = FeedFaults.Describe(context, causes);
            var message =
                run.Count == 1
                    ? $"Feed '{run[0].Feed.DisplayName}' does not arrive at {run[0].Places("or")}: {why}."
                    : string.Create(CultureInfo.InvariantCulture, $"{run.Count} feeds do not arrive: {why}. Missing: {Names(run)}.");
            context.Report(message, run[0].Pointer, [.. FeedFaults.Entities(run)]);
        }
    }

    private static string Names(List<FeedFault> run) => Wording.List(run.ConvertAll(fault => $"'{fault.Feed.DisplayName}' at {fault.Places("and")}"));
}
