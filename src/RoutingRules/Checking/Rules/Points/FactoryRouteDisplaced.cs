using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports labelled buses that came out somewhere without any patching and no longer do, because a route took their place.</summary>
/// <remarks>
/// Speaks only of a bus that has a label of its own and no feed: what a feed misses, the rules about feeds tell. Silent where the bus still comes out at
/// another output, or where its place led to none. One finding for each run of neighbours.
/// </remarks>
public sealed class FactoryRouteDisplaced : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2007",
            Name = "factory-route-displaced",
            Title = "Bus pushed off its usual output",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Checks =
                "No route takes the place of the factory route by which a labelled bus without a feed came out. A feed that is displaced is "
                + "told as not delivered.",
            Why = "Nobody patched the bus, so nobody notices that it is gone until it is missed.",
            Remedy = "Put the route on another sink, or patch the bus to its output by a route of its own. A bus that is no longer used loses its label.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var intentions = Intentions.Of(context);
        SinkRuns? found = null;
        foreach (var route in context.Routes)
        {
            for (var position = 0; !route.To.IsNone && position < route.Model.To.Width; position++)
            {
                var sink = route.To + position;
                var bus = context.FactorySource(sink);
                context.LookedAt(bus.IsNone ? 0 : 1);
                if (
                    !bus.IsNone
                    && context.Upstream(sink) != bus
                    && context.ViaIndex(sink) == route.Index
                    && context.GroupOf(bus).Kind == PortKind.Source
                    && intentions.IsLabelled(bus)
                    && intentions.FeedsOf(bus).Length == 0
                    && ComesOut(context, sink)
                    && !ComesOut(context, bus)
                )
                {
                    (found ??= new SinkRuns()).Add(sink, bus, 0, route.Index);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            Report(context, run);
        }
    }

    /// <summary>True when what a point carries comes out at an output.</summary>
    private static bool ComesOut(RuleContext context, PointIndex point)
    {
        foreach (var next in context.Downward(context.IsLooping(point) ? PointIndex.None : point))
        {
            if (context.GroupOf(next).Kind == PortKind.Output)
            {
                return true;
            }
        }

        return false;
    }

    private static void Report(RuleContext context, SinkRun run)
    {
        var bus = context.Address(run.Source, run.Width);
        var sink = context.Address(run.Sink, run.Width);
        var route = context.Routes[run.Order].Model;
        var taken = route.From is { } from ? $"the route from {from} took its place" : "a route clears it";
        var texts = new List<string>();
        var table = LabelTable.Of(context);
        for (var position = 0; position < run.Width; position++)
        {
            if (table.At(run.Source + position) is { } label && !texts.Contains(label.Text))
            {
                texts.Add(label.Text);
            }
        }

        context.Report(
            $"{bus}, labelled {Wording.Names(texts)}, no longer comes out through {sink}, where it went by itself, nor anywhere else: {taken}.",
            new Place(route, "/patch/routes", run.Order).Pointer,
            Entity.Of("source", bus),
            Entity.Of("sink", sink)
        );
    }
}
