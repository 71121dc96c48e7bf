using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports routes of the patch into transmit slots that nothing sends.</summary>
/// <remarks>
/// Slots of a stream that has no receiver, or that does not resolve, are left to the rules about streams, and sources that a feed misses to those about feeds.
/// </remarks>
public sealed class RouteUnused : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2008",
            Name = "route-unused",
            Title = "Route to a slot that is not sent",
            Family = RuleFamily.Points,
            Severity = Severity.Note,
            Checks = "Every transmit slot that the patch routes a source to travels in a stream, or over the link of a digital multicore.",
            Why = "The route looks like a finished job, but the signal does not leave the device.",
            Remedy = "Add the slots to a stream, or take the route out.",
            Source = "common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var intentions = Intentions.Of(context);
        HashSet<int>? sent = null;
        SinkRuns? found = null;
        foreach (var route in context.Routes)
        {
            if (route.From.IsNone || context.GroupOf(route.To).Kind != PortKind.Transmit)
            {
                continue;
            }

            context.LookedAt(route.Model.To.Width);
            for (var position = 0; position < route.Model.To.Width; position++)
            {
                var slot = route.To + position;
                if (
                    context.Upstream(slot) == route.From + position
                    && context.Fed(slot).IsEmpty
                    && !(sent ??= Sent(context)).Contains(slot.Value)
                    && !intentions.IsNamed(slot)
                    && !IsMissed(intentions, route.From + position)
                )
                {
                    (found ??= new SinkRuns()).Add(slot, route.From + position, 0, route.Index);
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            var slots = context.Address(run.Sink, run.Width);
            var carrier = context.GroupOf(run.Sink).IsCarrier ? "no link is plugged there" : "no stream takes them along";
            carrier = run.Width == 1 ? carrier.Replace("takes them", "takes it", StringComparison.Ordinal) : carrier;
            context.Report(
                $"{context.Address(run.Source, run.Width)} {Wording.Verb(slots, "is", "are")} routed to {slots}, but {carrier}.",
                new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order).Pointer,
                Entity.Of("slot", slots)
            );
        }
    }

    private static bool IsMissed(Intentions intentions, PointIndex source)
    {
        foreach (var (_, feed) in intentions.FeedsOf(source))
        {
            if (!intentions.IsServed(feed))
            {
                return true;
            }
        }

        return false;
    }

    private static HashSet<int> Sent(RuleContext context)
    {
        var slots = new HashSet<int>();
        foreach (var stream in context.Streams)
        {
            AddSlots(context, slots, stream.Model.From);
        }

        return slots;
    }

    private static void AddSlots(RuleContext context, HashSet<int> slots, PointRange from)
    {
        if (context.Device(from.Device) is { } device && device.Group(from.Group) is { } group)
        {
            for (var number = from.First; number <= from.Last && number <= group.Count; number++)
            {
                slots.Add(device.First(group).Value + number - 1);
            }
        }
    }
}
