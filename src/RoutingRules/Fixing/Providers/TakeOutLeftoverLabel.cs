using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes labels of silent points out, and the later of two labels of one point.</summary>
internal sealed class TakeOutLeftoverLabel : FixProvider
{
    public override string RuleId => "RR7006";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        if (context.RunOf(finding, "point") is { Width: > 0 } silent)
        {
            return [Fix.Of($"Take out the label of {finding.IdOf("point")}", FixSafety.Safe, Edits(context, silent, 0).ToValueList())];
        }

        if (context.RunOf(finding, "labelled-twice") is not { Width: > 0 } doubled)
        {
            return [];
        }

        return
        [
            Fix.Of(
                $"Keep the first label of {finding.IdOf("labelled-twice")} and take the later ones out",
                FixSafety.Unsafe,
                Edits(context, doubled, 1).ToValueList(),
                "Read what the device shows before one of the two goes."
            ),
        ];
    }

    /// <summary>Takes every label of a run of points out, but for the first few of each point.</summary>
    private static List<ShowEdit> Edits(FixContext context, (PointIndex First, int Width) points, int keep)
    {
        var labels = context.Show.Patch.Labels;
        var edits = new List<ShowEdit>();
        for (var i = labels.Count - 1; i >= 0; i--)
        {
            var label = labels[i];
            if (
                context.Resolved.Graph.Find(label.At, out var first) == ConnectionState.Connected
                && RunCuts.Kept(label.At.Width, position => points.Has(first + position) && Earlier(context, i, first + position) >= keep) is { } kept
            )
            {
                ListEdits.Exchange(
                    edits,
                    ShowLists.Labels,
                    i,
                    label,
                    kept.ConvertAll(part => label with { At = RunCuts.Part(label.At, part.First, part.Width) })
                );
            }
        }

        return edits;
    }

    private static int Earlier(FixContext context, int label, PointIndex point)
    {
        var count = 0;
        for (var i = 0; i < label; i++)
        {
            var at = context.Show.Patch.Labels[i].At;
            count += context.Resolved.Graph.Find(at, out var first) == ConnectionState.Connected && (first, at.Width).Has(point) ? 1 : 0;
        }

        return count;
    }
}
