using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports pairs that start on an even connector.</summary>
/// <remarks>
/// One finding for each run of neighbouring pairs; entities are the points of the run, then the feeds and lines in the order of their points.
/// </remarks>
public sealed class PairOffParity : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3006",
            Name = "pair-off-parity",
            Title = "Pair starts on an even number",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Severities = [Severity.Warning, Severity.Note],
            Checks = "A pair sits on an odd connector and the next even one; a warning where the hardware pairs them, else a note.",
            Why = "Hardware that works in twos joins 1 with 2 and 3 with 4, so a pair on 2 and 3 meets two strangers; people expect the same order.",
            Remedy = "Move the pair to an odd number and the next one, or leave it if the crew knows.",
            Source = "common practice, no source; AES3 carries two channels on one connector (from memory)",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var pairs = new List<(PointIndex First, DemandNode Demand)>();
        foreach (var demand in context.Demands)
        {
            context.LookedAt(demand.Width == 2 ? 1 : 0);
            if (demand.Width == 2 && EvenStart(context, demand) is { IsNone: false } first && !EarPairs.Of(context).IsTold(demand))
            {
                pairs.Add((first, demand));
            }
        }

        pairs.Sort(
            static (x, y) =>
                x.First != y.First ? x.First.CompareTo(y.First)
                : string.CompareOrdinal(x.Demand.Key, y.Demand.Key) is var order and not 0 ? order
                : x.Demand.Index.CompareTo(y.Demand.Index)
        );
        for (var start = 0; start < pairs.Count; )
        {
            var end = start + 1;
            while (
                end < pairs.Count
                && pairs[end].First <= pairs[end - 1].First + 2
                && context.GroupOf(pairs[end].First) == context.GroupOf(pairs[start].First)
                && context.DeviceOf(pairs[end].First) == context.DeviceOf(pairs[start].First)
            )
            {
                end++;
            }

            Report(context, pairs[start..end]);
            start = end;
        }
    }

    /// <summary>The even connector that a demand starts on now, or is pinned to; none when it starts on an odd one or on no connector.</summary>
    private static PointIndex EvenStart(RuleContext context, DemandNode demand)
    {
        var first =
            !demand.Existing.IsNone ? demand.Existing
            : demand.IsPinned && demand.Allowed.Count > 0 ? demand.Allowed[0]
            : PointIndex.None;
        return !first.IsNone && context.GroupOf(first).Kind is PortKind.Output or PortKind.Input && context.NumberOf(first) % 2 == 0 ? first : PointIndex.None;
    }

    private static void Report(RuleContext context, List<(PointIndex First, DemandNode Demand)> run)
    {
        var points = context.Address(run[0].First, run[^1].First.Value - run[0].First.Value + 2);
        var group = context.GroupOf(run[0].First);
        var names = run.ConvertAll(pair => $"'{pair.Demand.DisplayName}'");
        var ending = group.IsPaired ? ", but the device joins odd and even neighbours" : "";
        var message =
            run.Count == 1
                ? $"The pair {names[0]} starts on an even number, at {points}{ending}."
                : string.Create(CultureInfo.InvariantCulture, $"{run.Count} pairs start on even numbers, at {points}{ending}: {Wording.List(names)}.");
        var entities = new List<Entity> { Entity.Of("points", points) };
        entities.AddRange(
            run.ConvertAll(pair => pair.Demand.Feed is { } feed ? Entity.Of("feed", feed.Model.Id) : Entity.Of("line", pair.Demand.Line!.Model.Id))
        );
        var demand = run[0].Demand;
        var pointer = demand.Feed is { } node ? $"/feeds/{node.Index}/to/{demand.Entry}" : $"/lines/{demand.Line!.Index}/from";
        context.ReportAs(group.IsPaired ? Severity.Warning : Severity.Note, message, pointer, [.. entities]);
    }
}
