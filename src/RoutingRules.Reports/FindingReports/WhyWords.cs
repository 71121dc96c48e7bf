using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Assignment.Result;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The sentences of an answer.</summary>
internal sealed class WhyWords(DemandNames names, Show show)
{
    /// <summary>Names of demands in one sentence before the rest is only counted.</summary>
    private const int Most = 8;

    private const int MostDevices = 5;

    public string Name(string demand) => $"{names.Of(demand)} [{demand}]";

    public string Place(PointRange at)
    {
        var label = show.Rig.Devices.FirstOrDefault(device => device.Id == at.Device)?.Label;
        return label is null ? at.ToString() : $"{at} ({PlainText.Show(label)})";
    }

    public string Headline(WhyDecision decision) =>
        decision.At is not { } at
            ? $"{Name(decision.Demand)} has no place."
            : $"{Name(decision.Demand)} is at {Place(at)}: "
                + decision.Basis switch
                {
                    DecisionBasis.Pinned => "the document names this place.",
                    DecisionBasis.Held => "it was there before and is held.",
                    DecisionBasis.Kept => "it was there before, and what is plugged stays unless something more important needs it moved.",
                    _ => "the best place found for the show as a whole.",
                };

    public string Second(WhyDecision decision)
    {
        var second = decision.RunnerUp!;
        var where = second.At is { } at ? $"Without this place it would be at {Place(at)}" : "Without this place it would have none";
        var moves =
            (second.Moves.IsEmpty ? "" : $" ({PlainText.Count(second.Moves.Count, "other", "others")} would be elsewhere too)")
            + (second.IsProven ? "" : ", as far as was searched");
        return second.Difference switch
        {
            null =>
                $"{where}{moves}. By the numbers that would be just as good{(second.At is { } other && second.Moves.IsEmpty ? Tie(decision, [other]) : "")}.",
            { By: < 0 } better when decision.Basis == DecisionBasis.Held =>
                $"{where}{moves}. That would come out better ({Better(better)}), but it is held where it is.",
            { By: < 0 } better =>
                $"{where}{moves}. That even comes out better ({Better(better)}): the search ended before it was found; a larger budget may find it.",
            var worse => $"{where}{moves}. That {Worse(worse)}.",
        };
    }

    /// <summary>What settles it between places that are equally good, where that can be seen.</summary>
    private string Tie(WhyDecision decision, IEnumerable<PointRange> others) =>
        decision switch
        {
            { Basis: DecisionBasis.Held or DecisionBasis.Kept } => "; what stands there stays",
            { At: { } at } when others.All(other => IsBefore(at, other)) => "; the earlier device and the lower number win",
            _ => "",
        };

    private bool IsBefore(PointRange one, PointRange other) =>
        one.Device == other.Device
            ? one.Group == other.Group && one.First < other.First
            : show.Rig.Devices.First(device => device.Id == one.Device || device.Id == other.Device).Id == one.Device;

    /// <summary>What is worse, as the end of "That …".</summary>
    public static string Worse(ObjectiveDifference difference)
    {
        var by = difference.By;
        return difference.Number switch
        {
            0 => $"would leave {Count(by, "more critical signal", "more critical signals")} without a place",
            1 => $"would leave {Count(by, "more signal of high priority", "more signals of high priority")} without a place",
            2 => $"would leave {Count(by, "more signal", "more signals")} without a place",
            3 => $"would leave {Count(by, "more signal of low priority", "more signals of low priority")} without a place",
            4 => $"would move {Count(by, "held feed or line", "held feeds or lines")} from where it is plugged",
            5 => $"would move {Count(by, "more feed or line", "more feeds or lines")} from where it is plugged",
            _ => (ObjectiveLevel)(difference.Number - 6) switch
            {
                ObjectiveLevel.Sets => $"would put {Count(by, "more pair of a set", "more pairs of a set")} on different numbers of different devices",
                ObjectiveLevel.Groups => $"would spread a group over {Count(by, "more device", "more devices")}",
                ObjectiveLevel.Distance => $"would be {Count(by, "step", "steps")} further from the numbers that are preferred, or from equal numbers in sets",
                ObjectiveLevel.Order => $"would put {Count(by, "more pair", "more pairs")} against the order of the list",
                ObjectiveLevel.Rewritten =>
                    $"would write {Count(by, "more slot, block or route", "more slots, blocks or routes")} anew under signals that stay",
                ObjectiveLevel.TransmitBlocks => $"needs {Count(by, "more block", "more blocks")} at the senders",
                ObjectiveLevel.ReceiveBlocks => $"needs {Count(by, "more block", "more blocks")} at the receivers",
                _ => $"uses higher numbers, {by.ToString(CultureInfo.InvariantCulture)} more in sum",
            },
        };
    }

    private static string Better(ObjectiveDifference difference) =>
        difference.Number switch
        {
            < 4 => "fewer signals without a place",
            < 6 => "fewer moves",
            _ => (ObjectiveLevel)(difference.Number - 6) switch
            {
                ObjectiveLevel.Sets => "fewer sets on different numbers",
                ObjectiveLevel.Groups => "groups less spread",
                ObjectiveLevel.Distance => "nearer to preferred numbers",
                ObjectiveLevel.Order => "fewer pairs against the order of the list",
                ObjectiveLevel.Rewritten => "fewer slots, blocks and routes written anew",
                ObjectiveLevel.TransmitBlocks => "fewer blocks at the senders",
                ObjectiveLevel.ReceiveBlocks => "fewer blocks at the receivers",
                _ => "lower numbers",
            },
        };

    /// <summary>The places of a refusal.</summary>
    public static string Places(Refusal refusal) =>
        refusal.Points.IsEmpty
            ? string.Join(", ", refusal.Devices.Take(MostDevices))
                + (refusal.Devices.Count > MostDevices ? string.Create(CultureInfo.InvariantCulture, $" and {refusal.Devices.Count - MostDevices} more") : "")
            : string.Join(
                ", ",
                refusal
                    .Points.GroupBy(run => (run.Device, run.Group))
                    .Select(group => $"{group.Key.Device}/{group.Key.Group}/{string.Join("+", group.Select(run => run.Numbers))}")
            );

    /// <summary>What speaks against the places.</summary>
    public string Against(WhyDecision decision, Refusal refusal) =>
        refusal.Cause switch
        {
            RefusalCause.Dead => $"not working{Reasons(refusal)}",
            RefusalCause.Reserved => $"reserved{Reasons(refusal)}",
            RefusalCause.Excluded => "excluded by the options",
            RefusalCause.Taken => $"taken by {List(refusal.By)}",
            RefusalCause.NoPath => "no route, stream or cable can get there",
            RefusalCause.BlockClash =>
                "free, but as things are its block would bring sound where none belongs, no block is left for it, or more than one rule stands against it",
            RefusalCause.StreamLimit => "free, but a device would have to handle more streams than it can",
            RefusalCause.LinkFull => $"free, but {string.Join(", and ", refusal.Links.Select(LinkWords.Full))}",
            RefusalCause.Overheard => "loudspeakers would play it there",
            RefusalCause.Late => "would arrive there later than allowed",
            RefusalCause.Spare => "has to stay free as a spare",
            RefusalCause.Separation => "too close to a feed it must be kept apart from",
            RefusalCause.Worse => $"free, but {Worse(refusal.Difference!)}",
            RefusalCause.EquallyGood => $"free and just as good{Tie(decision, refusal.Points)}",
            RefusalCause.SearchEnded => "free, and would even be a little better: the search ended before it was found; a larger budget may find it",
            RefusalCause.NotLookedAt => "free, not looked into one by one",
            RefusalCause.NotAllowed => "not among the devices and zones it may use",
            _ => "no free point of the kind and width it needs",
        };

    /// <summary>What follows from the place that was asked about.</summary>
    public IEnumerable<string> Suppose(WhatIf what)
    {
        if (what.IsSoAlready)
        {
            yield return what.IsWanted ? $"{Name(what.Demand)} is at {Place(what.Point)} already."
            : what.At is { } now ? $"{Name(what.Demand)} is not at {Place(what.Point)} anyway but at {now}; nothing would change."
            : $"{Name(what.Demand)} is not at {Place(what.Point)} anyway, it has no place; nothing would change.";
            yield break;
        }

        if (!what.Contradiction.IsEmpty)
        {
            yield return what.Contradiction.Count == 1
                ? $"{Name(what.Demand)} cannot be at {Place(what.Point)}: no block, stream or route can bring it there without breaking a rule."
                : $"{Name(what.Demand)} cannot be at {Place(what.Point)}: that cannot hold together with the fixed places of "
                    + $"{List(what.Contradiction.Where(key => key != what.Demand))}; free one of them.";
            yield break;
        }

        yield return what.IsWanted
            ? what.At is not null
                ? $"{Name(what.Demand)} can be at {Place(what.Point)}."
                : what.IsProven
                    ? $"{Name(what.Demand)} at {Place(what.Point)} would stay without a place."
                    : $"No way was found to have {Name(what.Demand)} at {Place(what.Point)}; the search ended early, so that there may be one."
            : what.At is { } there
                ? $"If not at {Place(what.Point)}, and all else stays as far as it can, {Name(what.Demand)} would go to {Place(there)}."
                : what.IsProven
                    ? $"If not at {Place(what.Point)}, and all else stays as far as it can, {Name(what.Demand)} would have no place."
                    : $"If not at {Place(what.Point)}, no place was found for {Name(what.Demand)}; the search ended early, so that there may be one.";
        var others = what
            .Moves.Select(move => Leaves(what, move))
            .Concat(what.Lost.Select(lost => $"{(names.Of(lost) == lost ? lost : Name(lost))} would lose its place."));
        foreach (var sentence in others)
        {
            yield return sentence;
        }

        if (what.At is not null && what.Moves.IsEmpty && what.Lost.IsEmpty)
        {
            yield return "Nothing else has to move.";
        }
        else if (!what.IsProven && (!what.Moves.IsEmpty || !what.Lost.IsEmpty))
        {
            yield return "The search ended early; less may have to move.";
        }

        foreach (var remark in what.Remarks.Select(PlainText.Show))
        {
            yield return remark;
        }
    }

    /// <summary>Two cannot be at one place; which way the other goes, and who else goes, is what was found and may be done otherwise.</summary>
    private string Leaves(WhatIf what, MovedDemand move)
    {
        var isInTheWay =
            what.IsWanted
            && move.From is { } from
            && from.Device == what.Point.Device
            && from.Group == what.Point.Group
            && from.First <= what.Point.Last
            && what.Point.First <= from.Last;
        var held = move.IsHeld ? ", where it is held," : "";
        return move.From is null ? $"{Name(move.Demand)}, which has no place now, would be at {move.To}."
            : isInTheWay ? $"{Name(move.Demand)} must leave {move.From}{held} and would go to {move.To}."
            : $"{Name(move.Demand)} would move from {move.From}{held} to {move.To}.";
    }

    private static string Count(int number, string one, string many) => PlainText.Count(number, one, many);

    private static string Reasons(Refusal refusal) => refusal.Reasons.IsEmpty ? "" : $" ({PlainText.Show(string.Join("; ", refusal.Reasons))})";

    private string List(IEnumerable<string> demands)
    {
        var all = demands.ToList();
        return string.Join(", ", all.Take(Most).Select(names.Of))
            + (all.Count > Most ? string.Create(CultureInfo.InvariantCulture, $" and {all.Count - Most} more") : "");
    }
}
