using RoutingRules.Fixing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Of two cables in one input one belongs into a free input of the device: the one that makes the cables regular again comes first.</summary>
internal static class PlugRepairs
{
    private const int Most = 3;

    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding) =>
        finding.Rule == "RR2001" ? Moves(show).OrderBy(move => move.Irregularity).Select(move => move.Repair).Take(Most) : [];

    private static IEnumerable<(int Irregularity, OtherRepair Repair)> Moves(ResolvedShow show)
    {
        var elements = new PatchElements(show);
        var edits = new RunEdits(show, Hop.Cable);
        foreach (var conflict in show.Cables.Where(cable => cable.State == ConnectionState.Connected))
        {
            if (elements.Claiming(conflict.To).Count < 2 || conflict.Model.To.Width != 1)
            {
                continue;
            }

            var element = elements.Claiming(conflict.To).First(claim => claim.Index == conflict.Index);
            foreach (var input in FreeInputs(show, elements, conflict.To))
            {
                var change = new PatchChange();
                if (edits.Move(change, element, element.From, input))
                {
                    var (from, at) = (conflict.Model.From, show.Graph.Address(input));
                    yield return (
                        elements.With(change).Irregularity(),
                        new OtherRepair(
                            $"The cable from {from} is in {conflict.Model.To}, where another is, instead of {at}",
                            Fix.Of($"Plug {from} to {at}", FixSafety.Unsafe, change.Edits(show.Document), CauseWords.Caution)
                        )
                    );
                }
            }
        }
    }

    private static IEnumerable<PointIndex> FreeInputs(ResolvedShow show, PatchElements elements, PointIndex like)
    {
        var group = show.Graph.GroupOf(like);
        var first = show.Graph.DeviceOf(like).First(group);
        for (var i = 0; group.Kind == PortKind.Input && i < group.Count; i++)
        {
            if (elements.Claiming(first + i).Count == 0)
            {
                yield return first + i;
            }
        }
    }
}
