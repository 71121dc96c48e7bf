using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports different labels of a port group that look the same once the device has cut them.</summary>
/// <remarks>One finding for each text that remains.</remarks>
public sealed class LabelsEqualWhenCut : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7004",
            Name = "labels-equal-when-cut",
            Title = "Labels that look the same on the display",
            Family = RuleFamily.Labels,
            Severity = Severity.Warning,
            Checks = "No two different labels of a port group are equal when the device shows only as many characters as it can.",
            Why = "On paper they differ, on the desk they do not: the wrong fader goes up.",
            Remedy = "Put what tells them apart at the front.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var group in context.Labels.Count == 0 ? [] : LabelTable.Of(context).Groups(context))
        {
            var device = context.DeviceOf(group[0].Point);
            if (context.GroupOf(group[0].Point).Kind == PortKind.Network || LabelText.Limit(device, context.GroupOf(group[0].Point)) is not { } limit)
            {
                continue;
            }

            context.LookedAt(group.Count);
            if (group.Exists(label => LabelText.Length(label.Text) > limit))
            {
                CheckGroup(context, device, group, limit);
            }
        }
    }

    private static void CheckGroup(RuleContext context, DeviceNode device, List<LabelledPoint> group, int limit)
    {
        var shown = new Dictionary<string, List<LabelledPoint>>(StringComparer.Ordinal);
        var order = new List<string>();
        foreach (var label in group)
        {
            var text = LabelText.Normal(LabelText.Cut(label.Text, limit));
            if (!shown.TryGetValue(text, out var same))
            {
                shown.Add(text, same = []);
                order.Add(text);
            }

            if (!same.Exists(other => LabelText.AreSame(other.Text, label.Text)))
            {
                same.Add(label);
            }
        }

        foreach (var text in order)
        {
            var same = shown[text];
            if (same.Count > 1)
            {
                var labels = same.ConvertAll(label => $"'{label.Text}' at {context.Address(label.Point)}");
                context.Report(
                    $"'{device.DisplayName}' shows {Wording.List(labels)} alike, as '{LabelText.Cut(same[0].Text, limit)}'.",
                    $"/patch/labels/{same[1].Index}/text",
                    [.. same.ConvertAll(label => Entity.Of("point", context.Address(label.Point)))]
                );
            }
        }
    }
}
