using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Problem;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what an assignment came to, for people.</summary>
/// <remarks>Lines end with LF; the same result gives the same text. Characters that could steer a terminal are written out.</remarks>
public static class AssignmentTextReport
{
    private static readonly string[] Numbers =
    [
        "Critical feeds and lines left out",
        "High-priority feeds and lines left out",
        "Normal feeds and lines left out",
        "Low-priority feeds and lines left out",
        "Held feeds and lines moved",
        "Other feeds and lines moved",
        "Pairs of a set on different devices and different numbers",
        "Devices more than one that groups are spread over",
        "Steps away from preferred numbers",
        "Pairs against the order of the list",
        "Slots, blocks and routes written anew under what stays",
        "Transmit blocks used",
        "Receive blocks used",
        "Sum of all numbers",
    ];

    /// <summary>
    /// Writes the report: what is left out first, then contradicting pins, what moved, the places by device, remarks, how good the result is, and how full
    /// devices and links are.
    /// </summary>
    /// <param name="result">The result.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="order">The order of the aims that was asked for; empty for the usual one.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(AssignmentResult result, TextWriter output, ValueList<ObjectiveLevel> order = default)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(output);
        var names = new DemandNames(result.Show);
        output.Write($"{PlainText.Show(result.Show.Title)}: {Headline(result)}\n");
        WriteUnplaced(result, names, output);
        WriteList(
            output,
            "These fixed places cannot hold together; free one of each line",
            result.Contradictions.Select(set => string.Join(" with ", set.Select(demand => $"{names.Of(demand)} [{demand}]")))
        );
        WriteList(output, "Moved: take the cable of each to its new place", result.Moved.Select(demand => Moved(result, names, demand)));
        WritePlacements(result, names, output);
        WriteList(output, "Outputs that sounded before and are silent now", result.Silenced.Select(point => point.ToString()));
        WriteList(output, "Channels cleared because no line with a place names them", result.Cleared.Select(point => point.ToString()));
        WriteList(output, "Streams taken away", result.RemovedStreams.Select(stream => stream.Value));
        WriteList(
            output,
            "Receivers that took a stream and take none now",
            result.RemovedReceivers.Select(receiver => $"{receiver.At}, which took {receiver.Stream}")
        );
        WriteList(output, "Remarks", result.Notes.Select(PlainText.Show));
        WriteObjective(result, order, output);
        if (!result.Utilisation.IsEmpty)
        {
            UtilisationText.Write(result.Show, result.Utilisation, output);
        }

        LinkUseText.Write(result.Links, output);
    }

    private static string Headline(AssignmentResult result)
    {
        var left = result.Unplaced.IsEmpty ? "everything is placed" : $"{PlainText.Count(result.Unplaced.Count, "feed or line", "feeds or lines")} not placed";
        return result.Status switch
        {
            AssignmentStatus.Optimal => $"{left}; nothing better exists.",
            AssignmentStatus.Feasible => string.Create(
                CultureInfo.InvariantCulture,
                $"{left}; {result.ProvenNumbers} of {ObjectiveVector.Length} numbers are proven to be the smallest possible."
            ),
            AssignmentStatus.Stopped => string.Create(
                CultureInfo.InvariantCulture,
                $"stopped before the search ended; so far {left}, and what has no place may still find one. {result.ProvenNumbers} of "
                    + $"{ObjectiveVector.Length} numbers are proven to be the smallest possible."
            ),
            _ => $"the fixed places contradict each other; of the rest, {left}.",
        };
    }

    private static void WriteUnplaced(AssignmentResult result, DemandNames names, TextWriter output)
    {
        if (result.Unplaced.IsEmpty)
        {
            return;
        }

        output.Write("\nNot placed\n");
        foreach (var unplaced in result.Unplaced)
        {
            var sink = unplaced.Sink is { } at ? $" does not reach {at}" : "";
            output.Write($"  {names.Of(unplaced.Demand)} [{unplaced.Demand}]{sink}: {PlainText.Show(unplaced.Reason)}\n");
            WriteConflict(unplaced, new ConflictText(names, result.Show), output, "    ");
        }

        var open = result.Unplaced.Count(unplaced => unplaced.ConflictProof == ConflictProof.NotChecked);
        if (open > 0 && open < result.Unplaced.Count)
        {
            output.Write($"  {PlainText.Count(open, "was", "were")} not looked into further, to save time; `routing-rules why` does so for one at a time.\n");
        }
    }

    internal static void WriteConflict(UnplacedDemand unplaced, ConflictText text, TextWriter output, string indent)
    {
        if (text.Conflict(unplaced) is { } conflict)
        {
            output.Write($"{indent}{conflict}\n");
        }

        foreach (var relaxation in unplaced.Relaxations)
        {
            output.Write($"{indent}Would fit if {text.Change(relaxation)}.\n");
        }
    }

    private static string Moved(AssignmentResult result, DemandNames names, string demand)
    {
        foreach (var placement in result.Placements)
        {
            if (placement.Demand == demand)
            {
                return $"{names.Of(demand)} [{demand}]: now {placement.At}";
            }
        }

        return $"{names.Of(demand)} [{demand}]: now without a place";
    }

    private static void WritePlacements(AssignmentResult result, DemandNames names, TextWriter output)
    {
        foreach (var device in result.Show.Rig.Devices)
        {
            var table = new TextColumns();
            foreach (
                var placement in result
                    .Placements.Where(placement => placement.At.Device == device.Id)
                    .OrderBy(placement => placement.At.Group)
                    .ThenBy(placement => placement.At.First)
            )
            {
                var state =
                    placement.IsPinned ? "fixed by the document"
                    : placement.IsKept ? "as before"
                    : "new";
                table.Add($"{placement.At.Group}/{placement.At.Numbers}", names.Of(placement.Demand), names.SourceOrSinks(placement.Demand), state);
            }

            if (table.HasRows)
            {
                output.Write($"\n{(device.Label is { } label ? $"{PlainText.Show(label)} ({device.Id})" : device.Id.Value)}\n");
                table.WriteTo(output, "  ");
            }
        }
    }

    private static void WriteList(TextWriter output, string title, IEnumerable<string> items)
    {
        var first = true;
        foreach (var item in items)
        {
            output.Write(first ? $"\n{title}\n  {item}\n" : $"  {item}\n");
            first = false;
        }
    }

    private static void WriteObjective(AssignmentResult result, ValueList<ObjectiveLevel> order, TextWriter output)
    {
        if (result.Objective is not { } objective)
        {
            return;
        }

        var table = new TextColumns();
        for (var i = 0; i < ObjectiveVector.Length; i++)
        {
            var at = LevelOrder.At(order.AsSpan(), i);
            table.Add(Numbers[at], objective.Values[at].ToString(CultureInfo.InvariantCulture), i < result.ProvenNumbers ? "proven" : "");
        }

        output.Write("\nHow good it is: smaller is better, earlier lines weigh more than all later ones\n");
        table.WriteTo(output, "  ");
    }
}
