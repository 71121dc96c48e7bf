using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>
/// Reports lines that name a point twice in one list. An entry that says the same again counts once; two that overlap want two halves at one point.
/// </summary>
public sealed class PointRepeated : Rule<LineNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1110",
            Name = "point-repeated",
            Title = "Point listed twice",
            Family = RuleFamily.Document,
            Severity = Severity.Warning,
            Severities = [Severity.Error, Severity.Warning],
            Checks = "No line names a point twice in its `to`, nor an input twice in its `from.at`; an error where two entries overlap without being the same.",
            Why = "The second entry was meant for another channel or another split leg, which now gets nothing, and nobody sees it on the sheets.",
            Remedy = "Write the point that was meant, or take the second entry out.",
            Source = "common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, LineNode subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        Look(context, subject, subject.Model.To, "sink", "to");
        Look(context, subject, subject.Model.From.At, "input", "from/at");
    }

    private static void Look(RuleContext context, LineNode line, ValueList<PointRange> list, string role, string member)
    {
        for (var later = 1; later < list.Count; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                if (Overlap(list[earlier], list[later]) is not { } both)
                {
                    continue;
                }

                var isSame = list[earlier] == list[later];
                var severity = isSame ? Severity.Warning : Severity.Error;
                var message = isSame
                    ? $"Line '{line.DisplayName}' names {list[later]} twice; the second entry counts for nothing."
                    : $"Line '{line.DisplayName}' names {both} in two entries, {list[earlier]} and {list[later]}: it cannot be two channels of one "
                        + "line at once.";
                context.ReportAs(severity, message, $"/lines/{line.Index}/{member}/{later}", Entity.Of("line", line.Model.Id), Entity.Of(role, both));
                break;
            }
        }
    }

    private static PointRange? Overlap(PointRange one, PointRange other) =>
        one.Device == other.Device && one.Group == other.Group && one.First <= other.Last && other.First <= one.Last
            ? new PointRange(one.Device, one.Group, Math.Max(one.First, other.First), Math.Min(one.Last, other.Last))
            : null;
}
