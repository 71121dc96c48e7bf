using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Tests.Assignment;

/// <summary>Compares two results as the problem does: the first six numbers, then which demands failed, then the rest.</summary>
internal static class StrategyComparison
{
    /// <summary>Negative when the first result is better.</summary>
    public static int Compare(ResolvedShow show, AssignmentResult one, AssignmentResult other, ValueList<ObjectiveLevel> order)
    {
        for (var i = 0; i < 6; i++)
        {
            if (one.Objective!.Values[i] != other.Objective!.Values[i])
                return one.Objective.Values[i].CompareTo(other.Objective.Values[i]);
        }

        // The first demand in list order that failed in only one of the two decides: better is where it did not.
        var failedHere = one.Unplaced.Select(entry => entry.Demand).ToHashSet(StringComparer.Ordinal);
        var failedThere = other.Unplaced.Select(entry => entry.Demand).ToHashSet(StringComparer.Ordinal);
        foreach (var demand in show.Demands)
        {
            if (failedHere.Contains(demand.Key) != failedThere.Contains(demand.Key))
                return failedHere.Contains(demand.Key) ? 1 : -1;
        }

        return one.Objective!.CompareTo(other.Objective!, order);
    }
}
