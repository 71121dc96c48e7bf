using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>What assignments after a loss gave so far.</summary>
internal sealed class FallbackAttempt(ResolvedShow show)
{
    private readonly Dictionary<string, PointRange> places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> reasons = new(StringComparer.Ordinal);
    private readonly HashSet<string> elsewhere = new(StringComparer.Ordinal);

    /// <summary>What gives up its place, with what takes it, in the order found.</summary>
    public List<(DemandNode Demand, DemandNode By)> Displaced { get; } = [];

    /// <summary>The show that came out.</summary>
    public Show Document { get; private set; } = show.Document;

    /// <summary>Takes over what an assignment gave.</summary>
    /// <param name="result">The result.</param>
    /// <param name="isWidened">True where places beside those of the document were allowed.</param>
    /// <param name="leftOut">Demands it was told to leave out, so that its reasons for them say nothing.</param>
    public void Take(AssignmentResult result, bool isWidened, ValueList<string> leftOut)
    {
        Document = result.Show;
        foreach (var placement in result.Placements)
        {
            if (places.TryAdd(placement.Demand, placement.At) && isWidened)
            {
                elsewhere.Add(placement.Demand);
            }
        }

        foreach (var unplaced in result.Unplaced.Where(unplaced => !leftOut.Contains(unplaced.Demand)))
        {
            reasons[unplaced.Demand] = unplaced.Reason;
        }
    }

    /// <summary>Notes that a demand gives up its place for another.</summary>
    public void Displace(DemandNode demand, DemandNode by)
    {
        places.Remove(demand.Key);
        Displaced.Add((demand, by));
    }

    public bool IsDisplaced(DemandNode demand) => Displaced.Exists(entry => entry.Demand == demand);

    /// <summary>True for a point that something gives up.</summary>
    public bool IsGivenUp(PointIndex point) =>
        Displaced.Exists(entry => point.Value >= entry.Demand.Existing.Value && point.Value < entry.Demand.Existing.Value + entry.Demand.Width);

    /// <summary>Notes why there is no place for a demand.</summary>
    public void Refuse(DemandNode demand, string reason) => reasons[demand.Key] = reason;

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
