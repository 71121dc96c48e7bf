using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>
/// Reports routes of the patch whose source end carries nothing. One finding for each run of empty ends; silent outputs are left to their own rule.
/// </summary>
public sealed class RouteDangling : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2002",
            Name = "route-dangling",
            Title = "Route from an empty source",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Checks = "Every route that the patch writes starts at something that carries a real source.",
            Why = "Somebody expects signal there. A channel that takes an empty slot stays silent at the line check.",
            Remedy = "Bring signal to the named points with a stream, a cable or a route, or take the route out.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, The Active Map (an entry names an existing source channel)",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var silence = Silence.Of(context);
        var intentions = Intentions.Of(context);
        List<(PointIndex End, PointIndex Sink)>? found = null;
        var ends = new SinkRuns();
        foreach (var route in context.Routes)
        {
            for (var position = 0; !route.From.IsNone && position < route.Model.To.Width; position++)
            {
                context.LookedAt();
                var source = route.From + position;
                var sink = route.To + position;
                if (
                    context.Upstream(sink) == source
                    && silence.IsSilent(source)
                    && !silence.IsExplained(source)
                    && !LeadsToUsedOutput(context, intentions, sink)
                )
                {
                    var end = silence.End(source);
                    ends.Add(end, PointIndex.None, 0, route.Index);
                    (found ??= []).Add((end, sink));
                }
            }
        }

        if (found is null)
        {
            return;
        }

        foreach (var run in ends.Merge(context))
        {
            var sinks = new SinkRuns();
            foreach (var (end, sink) in found)
            {
                if (end >= run.Sink && end < run.Sink + run.Width)
                {
                    sinks.Add(sink, PointIndex.None, 0, 0);
                }
            }

            var names = sinks.Merge(context).ConvertAll(sinkRun => context.Address(sinkRun.Sink, sinkRun.Width).ToString());
            context.Report(
                $"{Wording.Names(names, false)} {(names.Count == 1 && !names[0].Contains('-', StringComparison.Ordinal) ? "is" : "are")} routed "
                    + $"from an empty source: {silence.WhyEnd(run.Sink, run.Width)}.",
                new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order).Pointer,
                Entity.Of("end", context.Address(run.Sink, run.Width))
            );
        }
    }

    /// <summary>True when the silence comes out at an output that its own rule reports: routed to directly, cabled or pinned by a feed.</summary>
    private static bool LeadsToUsedOutput(RuleContext context, Intentions intentions, PointIndex sink)
    {
        if (context.GroupOf(sink).Kind == PortKind.Output)
        {
            return true;
        }

        foreach (var point in context.Downward(sink))
        {
            if (context.GroupOf(point).Kind == PortKind.Output && (intentions.IsCabled(point) || intentions.IsNamed(point)))
            {
                return true;
            }
        }

        return false;
    }
}
