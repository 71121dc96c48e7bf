using RoutingRules.Model;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Planning.Losses;

/// <summary>Traces in the show after the steps of a plan what they bring back.</summary>
internal static class FallbackTrace
{
    /// <summary>True when the signal of a delivery is there after the steps.</summary>
    public static bool Arrives(FailureModel simulation, LossSet lost, FallbackTask task, Arrival delivery, PointRange place, ValueList<FallbackStep> steps)
    {
        var graph = simulation.Show.Graph;
        graph.Find(place, out var run);
        var demand = delivery.Demand;
        for (var position = 0; position < demand.Width; position++)
        {
            // A feed must come out at its new place and at what played it before, unless it had no cable there or has another at its new place.
            var source = demand.Feed is null ? run + position : demand.Feed.Source + position;
            var isPlayedAsBefore =
                demand.Feed is null
                || run == demand.Existing
                || steps.Any(step => step.Demand == demand.Key && !step.CableTo.IsEmpty)
                || (task.IsCabled(demand) && !FallbackWriter.IsCabled(graph, run + position));
            var ends = isPlayedAsBefore ? [delivery.Ends[position]] : Players.Of(simulation.Show, run.Value + position).ConvertAll(player => player.End);
            if (
                source.IsNone
                || !ends.TrueForAll(end =>
                    simulation.Sounds(end, lost)
                    && ExistingPlacements.IsFedBy(graph, end, source.Value)
                    && (demand.Feed is null || ExistingPlacements.IsFedBy(graph, end, run.Value + position))
                )
            )
            {
                return false;
            }
        }

        return !task.IsAtLost(run);
    }
}
