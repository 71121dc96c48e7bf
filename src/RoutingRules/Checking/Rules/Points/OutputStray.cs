using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports outputs that carry a source which no feed has there. What lies behind a placed point or behind another output is not judged.</summary>
/// <remarks>
/// Silent without any feed, about sources whose feed is not served in full (the feed rules say where they are), and about the lines' own signals.
/// Factory leftovers on outputs without cable and label give one note for each device. A slot meant for another device of its stream has its own rule.
/// </remarks>
public sealed class OutputStray : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2009",
            Name = "output-stray",
            Title = "Output with a source nobody wants there",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Severities = [Severity.Warning, Severity.Note],
            Checks = "Every output that a route, a stream, a cable or a label touches carries a source that a feed has there, or nothing.",
            Why = "Plug a loudspeaker or a pack into that output and it plays a mix that nobody meant for it.",
            Remedy = "Clear the slot or the route that brings the source there, or add the feed that is meant.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(StrayOutputs.Sounding(context));
        var found = StrayOutputs.Find(context);
        if (!found.IsEmpty)
        {
            Report(context, found.Merge(context));
        }
    }

    private static void Report(RuleContext context, List<SinkRun> runs)
    {
        var leftovers = new SinkRuns();
        foreach (var run in runs)
        {
            if (run.Tag == StrayOutputs.SharedBlock)
            {
                continue;
            }

            var outputs = context.Address(run.Sink, run.Width);
            if (run.Tag == StrayOutputs.Leftover)
            {
                for (var position = 0; position < run.Width; position++)
                {
                    leftovers.Add(run.Sink + position, PointIndex.None, 0, run.Order);
                }

                continue;
            }

            var sources = context.Address(run.Source, run.Width);
            context.Report(
                $"{outputs} {Wording.Verb(outputs, "carries", "carry")} {sources}, but no feed has {Wording.Verb(outputs, "it", "them")} there.",
                StrayOutputs.Pointer(context, run.Sink),
                Entity.Of("output", outputs),
                Entity.Of("source", sources)
            );
        }

        ReportLeftovers(context, leftovers.Merge(context));
    }

    private static void ReportLeftovers(RuleContext context, List<SinkRun> runs)
    {
        for (var i = 0; i < runs.Count; i++)
        {
            var device = context.DeviceOf(runs[i].Sink);
            var names = new List<string> { context.Address(runs[i].Sink, runs[i].Width).ToString() };
            for (; i + 1 < runs.Count && context.DeviceOf(runs[i + 1].Sink) == device; i++)
            {
                names.Add(context.Address(runs[i + 1].Sink, runs[i + 1].Width).ToString());
            }

            context.ReportAs(
                Severity.Note,
                $"Outputs of '{device.DisplayName}' still carry what they carry without any patching, and no feed asks for it: {Wording.Names(names, false)}.",
                string.Create(CultureInfo.InvariantCulture, $"/rig/devices/{device.Index}"),
                [Entity.Of("device", device.Id), .. names.ConvertAll(name => Entity.Of("output", name))]
            );
        }
    }
}
