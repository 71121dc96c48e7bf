using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports one text at several points of a port group that carry different sources.</summary>
/// <remarks>A label that is written once for a whole run is meant. One finding for each text and group.</remarks>
public sealed class LabelDoubled : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7002",
            Name = "label-doubled",
            Title = "One label on different things",
            Family = RuleFamily.Labels,
            Severity = Severity.Warning,
            Checks = "No two points of a port group have the same label, capitals and spaces aside, while they carry different sources.",
            Why = "Whoever mutes or plugs by the label gets the wrong one half of the time.",
            Remedy = "Give each its own label.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var texts = new Dictionary<string, LabelledPoint>(StringComparer.Ordinal);
        foreach (var group in context.Labels.Count == 0 ? [] : LabelTable.Of(context).Groups(context))
        {
            if (context.GroupOf(group[0].Point).Kind is PortKind.Transmit or PortKind.Receive or PortKind.Network)
            {
                continue;
            }

            texts.Clear();
            List<List<LabelledPoint>>? doubled = null;
            foreach (var label in group)
            {
                if (context.Origin(label.Point).IsNone)
                {
                    continue;
                }

                context.LookedAt();
                var text = LabelText.Normal(label.Text);
                if (text.Length == 0 || texts.TryAdd(text, label))
                {
                    continue;
                }

                Add(context, doubled ??= [], texts[text], label);
            }

            foreach (var same in doubled ?? [])
            {
                var points = same.ConvertAll(label => context.Address(label.Point).ToString());
                context.Report(
                    $"{Wording.List(points)} have the same label '{same[0].Text}' but carry different sources.",
                    $"/patch/labels/{same[1].Index}/text",
                    [.. points.ConvertAll(point => Entity.Of("point", point))]
                );
            }
        }
    }

    private static void Add(RuleContext context, List<List<LabelledPoint>> doubled, LabelledPoint first, LabelledPoint label)
    {
        var same = doubled.Find(points => points[0] == first);
        if (IsOther(context, first, label) && (same is null || same.TrueForAll(other => IsOther(context, other, label))))
        {
            if (same is null)
            {
                doubled.Add(same = [first]);
            }

            same.Add(label);
        }
    }

    private static bool IsOther(RuleContext context, LabelledPoint one, LabelledPoint other) =>
        one.Index != other.Index && context.Origin(one.Point) != context.Origin(other.Point) && IsHeard(context, one.Point) && IsHeard(context, other.Point);

    /// <summary>True for outputs and sinks, and for buses and inputs that reach one: two spare inputs may share a name.</summary>
    private static bool IsHeard(RuleContext context, PointIndex point)
    {
        if (context.GroupOf(point).Kind is PortKind.Output or PortKind.Sink)
        {
            return true;
        }

        foreach (var next in context.IsLooping(point) ? [] : FeedPlaces.Reached(context, point))
        {
            if (context.GroupOf(next).Kind is PortKind.Output or PortKind.Sink)
            {
                return true;
            }
        }

        return false;
    }
}
