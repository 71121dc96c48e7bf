using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Edits of labels.</summary>
internal static class LabelEdits
{
    /// <summary>Gives labelled points new texts; a label that speaks of others too is cut.</summary>
    /// <param name="context">The show.</param>
    /// <param name="texts">The text of each point.</param>
    public static ValueList<ShowEdit> SetText(FixContext context, IReadOnlyDictionary<PointIndex, string> texts)
    {
        var labels = context.Show.Patch.Labels;
        var edits = new List<ShowEdit>();
        for (var i = labels.Count - 1; i >= 0; i--)
        {
            var before = labels[i];
            if (context.Resolved.Graph.Find(before.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            var parts = new List<PointLabel>();
            for (var position = 0; position < before.At.Width; position++)
            {
                var text = texts.GetValueOrDefault(first + position, before.Text);
                if (parts.Count > 0 && parts[^1].Text == text)
                {
                    parts[^1] = parts[^1] with { At = new PointRange(before.At.Device, before.At.Group, parts[^1].At.First, before.At.First + position) };
                }
                else
                {
                    parts.Add(before with { At = RunCuts.Part(before.At, position, 1), Text = text });
                }
            }

            if (parts.Count > 1 || parts[0].Text != before.Text)
            {
                ListEdits.Exchange(edits, ShowLists.Labels, i, before, parts);
            }
        }

        return edits.ToValueList();
    }
}
