using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Answers;

/// <summary>What assignments after a loss gave so far.</summary>
internal sealed class FallbackAttempt(ResolvedShow show)
{
    private readonly Dictionary<string, PointRange> places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> reasons = new(StringComparer.Ordinal);
    private readonly HashSet<string> elsewhere = new(StringComparer.Ordinal);

    /// <summary>The show that came out.</summary>
    public Show Document { get; private set; } = show.Document;

    public void Take(AssignmentResult result, bool isWidened)
    {
        Document = result.Show;
        foreach (var placement in result.Placements)
        {
            if (places.TryAdd(placement.Demand, placement.At) && isWidened)
            {
                elsewhere.Add(placement.Demand);
            }
        }

        foreach (var unplaced in result.Unplaced)
        {
            reasons[unplaced.Demand] = unplaced.Reason;
        }
    }

    /// <summary>Notes that no move is left for a demand.</summary>
    public void Defer(DemandNode demand) => reasons[demand.Key] = "The plan has used all its moves.";

    public bool IsPlaced(DemandNode demand) => places.ContainsKey(demand.Key);

    public bool IsElsewhere(DemandNode demand) => elsewhere.Contains(demand.Key);

    public PointRange? PlaceOf(DemandNode demand) => places.TryGetValue(demand.Key, out var place) ? place : null;

    /// <summary>True when it was served and is plugged elsewhere now.</summary>
    public bool IsMoved(DemandNode demand) =>
        !demand.Existing.IsNone && places.TryGetValue(demand.Key, out var place) && place != show.Graph.Address(demand.Existing, demand.Width);

    public string Reason(DemandNode demand) => reasons.GetValueOrDefault(demand.Key) ?? "No path, or no place with room, is left for it.";
}
