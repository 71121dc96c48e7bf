using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports sinks that more than one route, stream, cable or link claims. Two streams at one receive slot are left to the stream rules.</summary>
public sealed class SinkClaimedTwice : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2001",
            Name = "sink-claimed-twice",
            Title = "Two sources for one sink",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Severities = [Severity.Error, Severity.Warning],
            Checks = "No output, channel, slot or input gets signal from two routes, streams, cables or links.",
            Why = "A patch never mixes: one of the two is heard and the other is lost, and two cables into one input load each other.",
            Remedy = "Take out the one that is not wanted.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, The Active Map (one source for each output channel)",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(PlacesThatName.Connections(context));
        if (context.Conflicts.Count == 0)
        {
            return;
        }

        var seen = new HashSet<int>();
        var tags = new Dictionary<(HopKind First, HopKind Other, int Distance), int>();
        var runs = new SinkRuns();
        for (var i = 0; i < context.Conflicts.Count; i++)
        {
            var conflict = context.Conflicts[i];
            if ((conflict.FirstKind == HopKind.Stream && conflict.OtherKind == HopKind.Stream) || !seen.Add(conflict.Sink.Value))
            {
                continue;
            }

            // Neighbours belong together only where both claims run in parallel.
            var first = context.Upstream(conflict.Sink);
            var key = (conflict.FirstKind, conflict.OtherKind, first.IsNone ? int.MinValue : first.Value - conflict.Sink.Value);
            if (!tags.TryGetValue(key, out var tag))
            {
                tag = tags.Count;
                tags.Add(key, tag);
            }

            runs.Add(conflict.Sink, conflict.OtherFrom, tag, i);
        }

        foreach (var run in runs.Merge(context))
        {
            Report(context, run);
        }
    }

    private static void Report(RuleContext context, SinkRun run)
    {
        var conflict = context.Conflicts[run.Order];
        var at = context.Address(run.Sink, run.Width);
        var first = Claim(context, conflict.FirstKind, conflict.FirstIndex, context.Upstream(run.Sink), run.Width);
        var other = Claim(context, conflict.OtherKind, conflict.OtherIndex, run.Source, run.Width);
        var pointer = conflict.OtherKind switch
        {
            HopKind.Stream => $"/patch/streams/{Number(conflict.OtherIndex)}/to/{Number(conflict.OtherReceiver)}",
            HopKind.Cable => $"/rig/cables/{Number(conflict.OtherIndex)}",
            HopKind.Carrier => $"/rig/links/{Number(conflict.OtherIndex)}",
            _ => $"/patch/routes/{Number(conflict.OtherIndex)}",
        };
        var entity = Entity.Of("sink", at);
        if (run.Source == context.Upstream(run.Sink))
        {
            context.ReportAs(
                Severity.Warning,
                $"{at} {Wording.Verb(at, "is", "are")} patched twice in the same way: {first} and {other}. One of them is enough.",
                pointer,
                entity
            );
        }
        else
        {
            context.Report($"{at} {Wording.Verb(at, "gets", "get")} signal twice: {first} and {other}. The first one counts.", pointer, entity);
        }
    }

    private static string Claim(RuleContext context, HopKind kind, int index, PointIndex from, int width)
    {
        var source = from.IsNone ? "" : context.Address(from, width).ToString();
        return kind switch
        {
            HopKind.Stream => $"stream '{context.Streams[index].Model.Id}' ({(width == 1 ? "slot" : "slots")} {source})",
            HopKind.Cable => $"the cable from {source}",
            HopKind.Carrier => $"link '{context.Links[index].Model.Id}' ({(width == 1 ? "slot" : "slots")} {source})",
            _ when from.IsNone => width == 1 ? "a route that clears it" : "a route that clears them",
            _ => $"a route from {source}",
        };
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
