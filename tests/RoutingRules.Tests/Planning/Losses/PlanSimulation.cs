using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Resolving;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>Judges a plan after a loss by deleting what is lost.</summary>
internal static class PlanSimulation
{
    /// <summary>Carries the steps out, deletes what is lost and traces: what is recovered at its new place, what went on where it was.</summary>
    public static string? Broken(Show show, ResolvedShow before, LossImpact loss, FallbackPlan plan)
    {
        var lost = RemovalOracle.Resolve(RemovalOracle.Without(show, loss.Lost));
        var after = RemovalOracle.Resolve(RemovalOracle.Without(plan.Apply(show), loss.Lost));
        foreach (var demand in before.Demands)
        {
            var back = plan.Recovered.FirstOrDefault(recovered => recovered.Demand == demand.Key);
            if (plan.Displaced.FirstOrDefault(entry => entry.Demand == demand.Key) is { } displaced)
            {
                // What is said to give up its place may fall silent, for nothing but a feed of higher priority that comes back there.
                var by = before.Demands.First(other => other.Key == displaced.By);
                if (
                    demand.Feed is not { } yielding
                    || by.Feed is not { } taking
                    || yielding.Model.Priority <= taking.Model.Priority
                    || yielding.Model.Role == FeedRole.InEar
                    || !plan.Recovered.Any(recovered => recovered.Demand == by.Key && recovered.To == displaced.At)
                )
                {
                    return $"{demand.Key} gives up its place for {by.Key}.";
                }

                continue;
            }

            if (demand.Feed is { } feed)
            {
                for (var position = 0; position < demand.Width; position++)
                {
                    var old = before.Graph.Address(demand.Existing + position);
                    var source = before.Graph.Address(feed.Source + position);
                    if (back is not null && RemovalOracle.Source(before, after, back.To[position]) != source)
                    {
                        return $"{demand.Key} is not at {back.To}.";
                    }

                    if (back is null && RemovalOracle.Source(before, lost, old) is { } still && RemovalOracle.Source(before, after, old) != still)
                    {
                        return $"{demand.Key} went on at {old} and is disturbed.";
                    }
                }
            }
            else
            {
                var place = back?.To ?? before.Graph.Address(demand.Existing, demand.Width);
                foreach (var sink in demand.Line!.Sinks)
                {
                    var isDead = plan.Unrecovered.Any(entry => entry.Demand == demand.Key && entry.Sink == before.Graph.Address(sink, demand.Width));
                    for (var position = 0; position < demand.Width && !isDead; position++)
                    {
                        if (RemovalOracle.Source(before, after, before.Graph.Address(sink + position)) != place[position])
                        {
                            return $"{demand.Key} does not come from {place} at its sink.";
                        }
                    }
                }
            }
        }

        return null;
    }
}
