using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports in-ear pairs that do not arrive as left and right of one pack.</summary>
/// <remarks>
/// Judged where the signal ends, behind the looms, for pairs that are placed; a pair that does not even arrive so where it is pinned is left to the rules
/// about pairs. One finding for each run of neighbouring pairs with the same fault.
/// </remarks>
public sealed class InEarPairCrossed : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9006",
            Name = "in-ear-pair-crossed",
            Title = "In-ear pair crossed, or on two packs",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Checks = "Both halves of an in-ear pair end at one pack, left at its left side and right at its right side, behind all cables.",
            Why =
                "With the loom one place off, two people share a mix, one ear each; with the plugs crossed the stage is the wrong way round in "
                + "somebody's head.",
            Remedy = "Mute these transmitters, put the plugs at the rack where the finding says, and listen on a pack, low, before a performer wears it.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(EarPairs.Of(context).Judged);
        var faults = EarPairs.Of(context).Faults.ToList();
        faults.Sort(
            static (x, y) =>
            {
                var order = x.Kind.CompareTo(y.Kind);
                order = order != 0 ? order : x.Left.CompareTo(y.Left);
                return order != 0 ? order : x.Right.CompareTo(y.Right);
            }
        );
        for (var start = 0; start < faults.Count; )
        {
            var end = start + 1;
            while (
                end < faults.Count
                && faults[end].Kind == faults[start].Kind
                && faults[start].Kind != EarPairs.FaultKind.Apart
                && faults[end].Left == faults[end - 1].Left + 2
                && context.DeviceOf(faults[end].Left) == context.DeviceOf(faults[start].Left)
                && context.GroupOf(faults[end].Left) == context.GroupOf(faults[start].Left)
            )
            {
                end++;
            }

            Report(context, faults[start..end]);
            start = end;
        }
    }

    private static void Report(RuleContext context, List<(EarPairs.FaultKind Kind, DemandNode Demand, PointIndex Left, PointIndex Right)> run)
    {
        var (kind, demand, left, right) = run[0];
        var first = left < right ? left : right;
        var width = 2 * run.Count;
        var isOne = run.Count == 1;
        var names = Wording.List([.. run.Select(fault => $"'{fault.Demand.DisplayName}'")]);
        var listeners = run.Select(fault => EarWords.Listener(fault.Demand.Feed!)).Distinct(StringComparer.Ordinal).ToList();
        var people = Wording.List(listeners);
        var hears = listeners.Count == 1 ? "hears" : "hear";
        context.Report(
            kind switch
            {
                EarPairs.FaultKind.Crossed =>
                    $"Left and right are crossed at {EarWords.At(context, first, width)}: {people} {hears} {names} with the sides exchanged.",
                EarPairs.FaultKind.OneOff =>
                    $"{names} {(isOne ? "lands" : "land")} on {EarWords.At(context, first, width)}, one place off: left in the right ear of one "
                        + $"pack, right in the left ear of the next, and {people} {hears} half of {(isOne ? "it" : "them")}.",
                _ => $"The halves of {names} do not get to one pack: left is at {EarWords.At(context, left, 1)}, right at "
                    + $"{EarWords.At(context, right, 1)}, and {people} {hears} half of it.",
            },
            $"/feeds/{demand.Feed!.Index}/to/{demand.Entry}",
            [
                .. kind == EarPairs.FaultKind.Apart
                    ? [Entity.Of("left", context.Address(left)), Entity.Of("right", context.Address(right))]
                    : new[] { Entity.Of("input", context.Address(first, width)) },
                .. run.Select(fault => Entity.Of("feed", fault.Demand.Feed!.Model.Id)),
            ]
        );
    }
}
