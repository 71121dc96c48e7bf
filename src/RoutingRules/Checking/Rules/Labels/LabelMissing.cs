using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports points in use without a label where most of their group have one.</summary>
/// <remarks>One finding for each port group; entities are the group and the points.</remarks>
public sealed class LabelMissing : Rule<ResolvedShow>
{
    /// <summary>From so many labels on, a group is evidently labelled.</summary>
    private const int Labelled = 2;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7001",
            Name = "label-missing",
            Title = "Point in use without a label",
            Family = RuleFamily.Labels,
            Severity = Severity.Note,
            Checks = "Points that feeds and lines use are labelled where most others in use of the same port group are.",
            Why = "At line check the unlabelled one costs the time.",
            Remedy = "Label the points the finding names.",
            Source = "common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Labels.Count == 0)
        {
            return;
        }

        var table = LabelTable.Of(context);
        var points = new LabelUse(context).Points;
        context.LookedAt(points.Count);
        for (var start = 0; start < points.Count; )
        {
            var device = context.DeviceOf(points[start]);
            var group = context.GroupOf(points[start]);
            var labelled = 0;
            var missing = new SinkRuns();
            var count = 0;
            var beyond = device.First(group) + group.Count;
            for (; start < points.Count && points[start] < beyond; start++)
            {
                if (table.At(points[start]) is not null)
                {
                    labelled++;
                }
                else
                {
                    missing.Add(points[start], PointIndex.None, 0, 0);
                    count++;
                }
            }

            if (count > 0 && labelled >= Labelled && count < labelled)
            {
                var names = missing.Merge(context).ConvertAll(run => context.Address(run.Sink, run.Width).ToString());
                context.Report(
                    $"No label at {Wording.List(names)}, although the others in use there have one.",
                    $"/rig/devices/{device.Index}",
                    [Entity.Of("group", $"{device.Id}/{group.Id}"), .. names.ConvertAll(name => Entity.Of("point", name))]
                );
            }
        }
    }
}
