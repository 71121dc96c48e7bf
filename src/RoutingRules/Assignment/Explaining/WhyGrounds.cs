using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>What the document asks for that a place fulfils, or misses.</summary>
internal static class WhyGrounds
{
    public static ValueList<string> Of(ResolvedShow show, DemandNode node, PointRange at, AssignmentResult result)
    {
        var grounds = new List<string>();
        AddPreferred(node, at, grounds);
        var places = result.Placements.ToDictionary(place => place.Demand, place => place.At, StringComparer.Ordinal);
        AddSet(show, node, at, places, grounds);
        AddGroup(show, node, at, places, grounds);
        AddSeparation(show, node, at, places, grounds);
        return grounds.ToValueList();
    }

    private static void AddPreferred(DemandNode node, PointRange at, List<string> grounds)
    {
        if ((node.Feed?.Model.Preferred ?? node.Line?.Model.Preferred) is { } wanted)
        {
            grounds.Add(
                wanted == at.First
                    ? string.Create(CultureInfo.InvariantCulture, $"It has the number it prefers, {wanted}.")
                    : string.Create(CultureInfo.InvariantCulture, $"It prefers number {wanted} and does not have it.")
            );
        }
    }

    private static void AddSet(ResolvedShow show, DemandNode node, PointRange at, Dictionary<string, PointRange> places, List<string> grounds)
    {
        foreach (var other in show.Demands)
        {
            if (
                node.Feed?.Model.Set is { } set
                && other.Feed is { } feed
                && feed.Model.Set == set
                && feed.Model.Part != node.Feed.Model.Part
                && other.Entry == node.Entry
                && places.TryGetValue(other.Key, out var there)
                && there.Device != at.Device
            )
            {
                grounds.Add(
                    there.First == at.First
                        ? $"It stands on the same number as {other.DisplayName} of its set, which is at {there}."
                        : $"{other.DisplayName} of its set stands on another number, at {there}."
                );
            }
        }
    }

    private static void AddGroup(ResolvedShow show, DemandNode node, PointRange at, Dictionary<string, PointRange> places, List<string> grounds)
    {
        if ((node.Feed?.Model.Group ?? node.Line?.Model.Group) is not { } group)
        {
            return;
        }

        var (here, elsewhere, nowhere) = (0, 0, 0);
        foreach (var other in show.Demands)
        {
            if (other != node && other.Feed is null == node.Feed is null && (other.Feed?.Model.Group ?? other.Line?.Model.Group) == group)
            {
                (here, elsewhere, nowhere) =
                    !places.TryGetValue(other.Key, out var there) ? (here, elsewhere, nowhere + 1)
                    : there.Device == at.Device ? (here + 1, elsewhere, nowhere)
                    : (here, elsewhere + 1, nowhere);
            }
        }

        if (here + elsewhere > 0)
        {
            var without = nowhere == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", and {nowhere} {(nowhere == 1 ? "has" : "have")} no place");
            grounds.Add(
                elsewhere == 0
                    ? $"All of its group \"{group}\"{(nowhere == 0 ? "" : " that has a place")} is on this device."
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"Of the others in its group \"{group}\", {here} {(here == 1 ? "is" : "are")} on this device and {elsewhere} elsewhere{without}."
                    )
            );
        }
    }

    private static void AddSeparation(ResolvedShow show, DemandNode node, PointRange at, Dictionary<string, PointRange> places, List<string> grounds)
    {
        foreach (var other in show.Demands)
        {
            if (
                node.Feed is { } mine
                && other.Feed is { } theirs
                && other.Entry == node.Entry
                && mine != theirs
                && places.TryGetValue(other.Key, out var there)
                && (
                    mine.Model.SeparateFrom.Any(separation => separation.Feed == theirs.Model.Id)
                    || theirs.Model.SeparateFrom.Any(separation => separation.Feed == mine.Model.Id)
                )
            )
            {
                grounds.Add($"It must be kept apart from {other.DisplayName}, which is at {there}.");
            }
        }
    }
}
