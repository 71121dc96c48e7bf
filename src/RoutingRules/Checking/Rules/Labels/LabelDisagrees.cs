using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Labels;

/// <summary>Reports outputs and channels that are labelled otherwise than the bus or the input they carry.</summary>
/// <remarks>
/// Capitals and spaces do not count, nor does what a display cuts. Silent where feeds or lines have something else there: their own rules speak.
/// One finding for each run of neighbouring points that carry a run of sources.
/// </remarks>
public sealed class LabelDisagrees : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR7005",
            Name = "label-disagrees",
            Title = "Labels at the two ends differ",
            Family = RuleFamily.Labels,
            Severity = Severity.Warning,
            Checks = "An output or a channel is labelled as the bus or the input that it carries, capitals and spaces aside.",
            Why = "Two people who read the two ends think of two different things while they turn one of them.",
            Remedy = "Find out which end is right, correct the other, or correct the patch.",
            Source = "common practice, no source; ST 2110-30 labels groups of channels end to end (from memory)",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Labels.Count == 0)
        {
            return;
        }

        var table = LabelTable.Of(context);
        LabelUse? use = null;
        var found = new SinkRuns();
        foreach (var label in table.Points)
        {
            var group = context.GroupOf(label.Point);
            var source = context.Origin(label.Point);
            if (group.Kind is not (PortKind.Output or PortKind.Sink) || source.IsNone || source == label.Point || table.At(source) is not { } other)
            {
                continue;
            }

            context.LookedAt();
            if (!Agree(context, label, other) && (use ??= new LabelUse(context)).IsMeant(label.Point, group.Kind))
            {
                found.Add(label.Point, source, 0, label.Index);
            }
        }

        foreach (var run in found.IsEmpty ? [] : found.Merge(context))
        {
            Report(context, table, run);
        }
    }

    private static bool Agree(RuleContext context, LabelledPoint one, LabelledPoint other)
    {
        if (LabelText.AreSame(one.Text, other.Text))
        {
            return true;
        }

        var limit = Math.Min(Limit(context, one.Point), Limit(context, other.Point));
        return LabelText.AreSame(LabelText.Cut(one.Text, limit), LabelText.Cut(other.Text, limit));
    }

    private static int Limit(RuleContext context, PointIndex point) => LabelText.Limit(context.DeviceOf(point), context.GroupOf(point)) ?? int.MaxValue;

    private static void Report(RuleContext context, LabelTable table, SinkRun run)
    {
        var points = context.Address(run.Sink, run.Width);
        var sources = context.Address(run.Source, run.Width);
        var texts = new List<string>();
        for (var position = 0; position < run.Width; position++)
        {
            texts.Add($"'{table.At(run.Sink + position)?.Text}' for '{table.At(run.Source + position)?.Text}'");
        }

        context.Report(
            $"{points} {Wording.Verb(points, "carries", "carry")} {sources}, but the labels differ: {Wording.List(texts)}.",
            $"/patch/labels/{table.At(run.Sink)?.Index}/text",
            Entity.Of("point", points),
            Entity.Of("source", sources)
        );
    }
}
