using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Takes labels off what moved away, and names points after the feeds and lines that are placed there.</summary>
internal static class LabelFollower
{
    /// <summary>The labels of a result without those at places that feeds and lines left, unless the point still carries the same source.</summary>
    public static ValueList<PointLabel> Kept(ResolvedShow before, ResolvedShow after)
    {
        var left = new HashSet<int>();
        foreach (var demand in before.Demands)
        {
            var (from, to) = (ResultDetails.Place(before, demand), ResultDetails.Place(after, demand));
            for (var position = 0; !from.IsNone && from != to && !to.IsNone && position < demand.Width; position++)
            {
                // An input is left with its plug; an output is left when it carries something else.
                if (demand.Line is not null || after.Graph.Origin(from + position) != before.Graph.Origin(from + position))
                {
                    left.Add(from.Value + position);
                }
            }
        }

        var kept = new List<PointLabel>();
        foreach (var label in after.Document.Patch.Labels)
        {
            if (left.Count == 0 || after.Graph.Find(label.At, out var first) != ConnectionState.Connected)
            {
                kept.Add(label);
                continue;
            }

            kept.AddRange(ResultRuns.Without(label.At, position => left.Contains(first.Value + position)).Select(at => label with { At = at }));
        }

        return kept.ToValueList();
    }

    /// <summary>The labels with one for each point of a placed feed or line that has none.</summary>
    public static ValueList<PointLabel> Named(ResolvedShow after, ValueList<PointLabel> labels)
    {
        var taken = new HashSet<int>();
        var texts = new HashSet<(int Device, int Group, string Text)>();
        foreach (var label in labels)
        {
            for (var position = 0; after.Graph.Find(label.At, out var first) == ConnectionState.Connected && position < label.At.Width; position++)
            {
                taken.Add(first.Value + position);
                texts.Add(Key(after, first + position, label.Text));
            }
        }

        var made = new List<PointLabel>(labels);
        foreach (var demand in after.Demands)
        {
            var places = demand.Line is { } line ? [demand.Existing, .. line.Sinks] : new List<PointIndex> { demand.Existing };
            foreach (var place in places)
            {
                for (var position = 0; !place.IsNone && position < demand.Width; position++)
                {
                    if (taken.Add(place.Value + position))
                    {
                        made.Add(
                            new PointLabel { At = after.Graph.Address(place + position, 1), Text = Text(after, texts, demand, place + position, position) }
                        );
                    }
                }
            }
        }

        return made.ToValueList();
    }

    private static string Text(ResolvedShow show, HashSet<(int Device, int Group, string Text)> texts, DemandNode demand, PointIndex at, int position)
    {
        var side =
            demand.Width == 1 ? ""
            : position == 0 ? " L"
            : " R";
        for (var number = 1; ; number++)
        {
            var end = number == 1 ? side : FormattableString.Invariant($" {number}{side}");
            var limit = LabelText.Limit(show.Graph.DeviceOf(at), show.Graph.GroupOf(at)) ?? int.MaxValue;
            var text = (LabelText.Cut(demand.DisplayName, Math.Max(1, limit - end.Length)).TrimEnd() + end).Trim();
            if (texts.Add(Key(show, at, text)) || number > show.Graph.GroupOf(at).Count)
            {
                return text;
            }
        }
    }

    private static (int Device, int Group, string Text) Key(ResolvedShow show, PointIndex at, string text) =>
        (show.Graph.DeviceOf(at).Index, show.Graph.GroupOf(at).Index, LabelText.Normal(text));
}
