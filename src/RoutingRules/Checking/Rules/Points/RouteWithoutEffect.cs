using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports routes at sinks whose source the device fixes. Routes that the device has no entry for at all are left to that rule.</summary>
public sealed class RouteWithoutEffect : Rule<ResolvedShow>
{
    private const int Patched = 0;
    private const int Cleared = 1;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2010",
            Name = "route-without-effect",
            Title = "Route at a fixed sink",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Checks = "No route changes or clears a sink that the device always feeds from one fixed source.",
            Why = "The device cannot do it: the sink goes on carrying its fixed source, whatever the patch says.",
            Remedy = "Bring the wanted signal to the fixed source of that sink, or use another sink.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, Output Routing Constraints",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(context.Routes.Count);
        SinkRuns? found = null;
        foreach (var idle in context.IdleRoutes)
        {
            var route = context.Routes[idle.RouteIndex];
            var from = route.From + (idle.Sink.Value - route.To.Value);
            if (!context.ProfileProblems(context.DeviceOf(idle.Sink)).IsEmpty || (!route.IsNull && context.RoutingBetween(from, idle.Sink) is null))
            {
                continue;
            }

            (found ??= new SinkRuns()).Add(idle.Sink, from, route.IsNull ? Cleared : Patched, idle.RouteIndex);
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            var to = context.Address(run.Sink, run.Width);
            var place = new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order);
            var fixedTo = context.FixedSource(run.Sink) is { IsNone: false } source
                ? $"always {Wording.Verb(to, "carries", "carry")} {Fixed(context, source, run)}"
                : "cannot be patched";
            if (run.Tag == Cleared)
            {
                context.Report($"{to} cannot be set to nothing: {Wording.Verb(to, "it", "they")} {fixedTo}.", place.Pointer, Entity.Of("to", to));
            }
            else
            {
                var from = context.Address(run.Source, run.Width);
                context.Report($"The route from {from} to {to} has no effect: {to} {fixedTo}.", place.Pointer, Entity.Of("from", from), Entity.Of("to", to));
            }
        }
    }

    private static string Fixed(RuleContext context, PointIndex source, SinkRun run)
    {
        var isWhole = context.FixedSource(run.Sink + (run.Width - 1)) == source + (run.Width - 1);
        return context.Address(source, isWhole ? run.Width : 1).ToString();
    }
}
