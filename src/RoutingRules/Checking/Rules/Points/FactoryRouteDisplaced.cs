using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports buses that came out somewhere without any patching and no longer do, because a route took their place.</summary>
/// <remarks>Speaks only of a bus that a feed, a cable or a label shows to be meant, and not of one whose feeds are all served or whose place another feed took.</remarks>
public sealed class FactoryRouteDisplaced : Rule<ResolvedShow>
{
    private const int Fed = 0;
    private const int Cabled = 1;
    private const int Labelled = 2;

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2007",
            Name = "factory-route-displaced",
            Title = "Bus pushed off its usual output",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Checks = "No route takes the place of a factory route by which a bus with a feed, a cable or a label came out.",
            Why = "Nobody patched the bus, so nobody notices that it is gone until it is missed.",
            Remedy = "Put the route on another sink, or patch the bus to its output by a route of its own.",
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
                if (bus.IsNone || context.Upstream(sink) == bus || context.ViaIndex(sink) != route.Index || context.GroupOf(bus).Kind != PortKind.Source)
                {
                    continue;
                }

                if (WhyMissed(context, intentions, bus, sink) is { } tag)
                {
                    (found ??= new SinkRuns()).Add(sink, bus, tag, route.Index);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            Report(context, intentions, run);
        }
    }

    /// <summary>The outputs at or behind a sink, as the patch stands; null when there are none.</summary>
    private static List<PointIndex>? Outputs(RuleContext context, PointIndex sink)
    {
        if (context.IsLooping(sink))
        {
            return null;
        }

        List<PointIndex>? outputs = null;
        foreach (var point in context.Downward(sink))
        {
            if (context.GroupOf(point).Kind == PortKind.Output)
            {
                (outputs ??= []).Add(point);
            }
        }

        return outputs;
    }

    private static int? WhyMissed(RuleContext context, Intentions intentions, PointIndex bus, PointIndex sink)
    {
        var feeds = intentions.FeedsOf(bus);
        if (feeds.Length > 0)
        {
            foreach (var (_, feed) in feeds)
            {
                if (!intentions.IsServed(feed) && IsWanted(context, feed, bus, Outputs(context, sink)))
                {
                    return Fed;
                }
            }

            return null;
        }

        if (Outputs(context, sink) is not { } outputs)
        {
            return null;
        }

        foreach (var output in outputs)
        {
            if (intentions.IsPlaced(output, out _))
            {
                return null;
            }
        }

        if (Sounds(context, intentions, bus))
        {
            return null;
        }

        foreach (var output in outputs)
        {
            if (intentions.IsCabled(output))
            {
                return Cabled;
            }

            if (intentions.IsLabelled(output) || intentions.IsLabelled(bus))
            {
                return Labelled;
            }
        }

        return null;
    }

    /// <summary>True when an entry of the feed that is not served might be served at one of the outputs.</summary>
    private static bool IsWanted(RuleContext context, FeedNode feed, PointIndex bus, List<PointIndex>? outputs)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var demand = context.Demand(feed, entry);
            for (var i = 0; outputs is not null && demand.Existing.IsNone && i < demand.Allowed.Count; i++)
            {
                if (outputs.Contains(demand.Allowed[i] + (bus.Value - feed.Source.Value)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>True when the bus still comes out at a cabled output.</summary>
    private static bool Sounds(RuleContext context, Intentions intentions, PointIndex bus)
    {
        foreach (var output in context.Downward(context.IsLooping(bus) ? PointIndex.None : bus))
        {
            if (context.GroupOf(output).Kind == PortKind.Output && intentions.IsCabled(output))
            {
                return true;
            }
        }

        return false;
    }

    private static void Report(RuleContext context, Intentions intentions, SinkRun run)
    {
        var bus = context.Address(run.Source, run.Width);
        var sink = context.Address(run.Sink, run.Width);
        var names = new List<string>();
        for (var position = 0; run.Tag == Fed && position < run.Width; position++)
        {
            foreach (var (_, feed) in intentions.FeedsOf(run.Source + position))
            {
                if (!intentions.IsServed(feed) && !names.Contains(feed.DisplayName))
                {
                    names.Add(feed.DisplayName);
                }
            }
        }

        var reason = run.Tag switch
        {
            Fed => $"{(names.Count == 1 ? "feed" : "feeds")} {Wording.Names(names)} {(names.Count == 1 ? "needs" : "need")} it",
            Cabled => "the output is cabled",
            _ => "it is labelled",
        };
        var route = context.Routes[run.Order].Model;
        var taken = route.From is { } from ? $"the route from {from} took its place" : "a route clears it";
        context.Report(
            $"{bus} no longer comes out through {sink}, where it went by itself: {taken}, although {reason}.",
            new Place(route, "/patch/routes", run.Order).Pointer,
            Entity.Of("source", bus),
            Entity.Of("sink", sink)
        );
    }
}
