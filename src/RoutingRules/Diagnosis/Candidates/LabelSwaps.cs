using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Exchanges two labels: one of a point that a finding is about, and one that says what should stand there.</summary>
internal static class LabelSwaps
{
    /// <summary>True for a finding that labels alone may be the cause of.</summary>
    public static bool Concerns(Finding finding) => finding.Rule is "RR7005" or "RR7002";

    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        if (!Concerns(finding))
        {
            yield break;
        }

        var labels = show.Document.Patch.Labels;
        for (var one = 0; one < labels.Count; one++)
        {
            if (show.Graph.Find(labels[one].At, out var point) != ConnectionState.Connected || !IsAbout(show, finding, point))
            {
                continue;
            }

            foreach (var wanted in Ends(show, point).Distinct(StringComparer.Ordinal))
            {
                for (var other = 0; other < labels.Count; other++)
                {
                    if (other != one && labels[other].Text == wanted && labels[one].Text != wanted && !IsEnd(show, point, labels[other]))
                    {
                        yield return Swap(labels, Math.Min(one, other), Math.Max(one, other));
                    }
                }
            }
        }
    }

    private static OtherRepair Swap(ValueList<PointLabel> labels, int one, int other) =>
        new(
            $"The labels of {labels[one].At} and {labels[other].At} are exchanged",
            Fix.Of(
                $"Label {labels[one].At} '{labels[other].Text}' and {labels[other].At} '{labels[one].Text}'",
                FixSafety.Unsafe,
                [
                    ShowEdit.Replace(ShowLists.Labels, other, labels[other], labels[other] with { Text = labels[one].Text }),
                    ShowEdit.Replace(ShowLists.Labels, one, labels[one], labels[one] with { Text = labels[other].Text }),
                ],
                "Look at the rig which of the two is right before anybody plugs by a label."
            )
        );

    /// <summary>True for a point that the finding names, or that leads to one or comes from one.</summary>
    private static bool IsAbout(ResolvedShow show, Finding finding, PointIndex point)
    {
        foreach (var entity in finding.Entities)
        {
            if (PointRange.TryParse(entity.Id, out var run, out _) && show.Graph.Find(run, out var first) == ConnectionState.Connected)
            {
                for (var i = 0; i < run.Width; i++)
                {
                    if (Leads(show.Graph, first + i, point) || Leads(show.Graph, point, first + i))
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    /// <summary>The labels at the other ends of the paths through a point.</summary>
    private static IEnumerable<string> Ends(ResolvedShow show, PointIndex point) =>
        show.Document.Patch.Labels.Where(label => IsEnd(show, point, label)).Select(label => label.Text);

    private static bool IsEnd(ResolvedShow show, PointIndex point, PointLabel label) =>
        show.Graph.Find(label.At, out var other) == ConnectionState.Connected
        && other != point
        && (Leads(show.Graph, point, other) || Leads(show.Graph, other, point));

    /// <summary>True when the signal of a point passes on to another.</summary>
    private static bool Leads(SignalGraph graph, PointIndex from, PointIndex to)
    {
        foreach (var passed in graph.Upward(to))
        {
            if (passed == from)
            {
                return true;
            }
        }

        return false;
    }
}
