using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports labels that a device cannot show whole.</summary>
/// <remarks>One finding for each port group; entities are its points with such labels.</remarks>
public sealed class LabelTooLong : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7003",
            Name = "label-too-long",
            Title = "Label longer than the display",
            Family = RuleFamily.Labels,
            Severity = Severity.Note,
            Checks = "A label has no more characters, as a person counts them, than the port group or the device shows.",
            Why = "The end of the label is what tells left from right and one from two, and it is the end that is cut.",
            Remedy = "Shorten the label so that what matters stands first.",
            Source = "characters as extended grapheme clusters, Unicode UAX 29 (from memory); the rest common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var group in context.Labels.Count == 0 ? [] : LabelTable.Of(context).Groups(context))
        {
            var device = context.DeviceOf(group[0].Point);
            if (LabelText.Limit(device, context.GroupOf(group[0].Point)) is not { } limit)
            {
                continue;
            }

            context.LookedAt(group.Count);
            group.RemoveAll(label => LabelText.Length(label.Text) <= limit);
            if (group.Count > 0)
            {
                var shown = group.ConvertAll(label => $"{context.Address(label.Point)} '{LabelText.Cut(label.Text, limit)}' of '{label.Text}'");
                context.Report(
                    string.Create(CultureInfo.InvariantCulture, $"'{device.DisplayName}' shows {limit} characters there: {Wording.List(shown)}."),
                    $"/patch/labels/{group[0].Index}/text",
                    [.. group.ConvertAll(label => Entity.Of("point", context.Address(label.Point)))]
                );
            }
        }
    }
}
