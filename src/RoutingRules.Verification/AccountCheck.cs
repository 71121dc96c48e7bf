using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>Reads the account a result gives of its demands, and compares it with what the patch does.</summary>
internal sealed class AccountCheck
{
    private readonly AssignmentFacts facts;
    private readonly ValueList<UnplacedDemand> unplaced;
    private readonly List<string> problems = [];

    public AccountCheck(AssignmentFacts facts, ValueList<Placement> placements, ValueList<UnplacedDemand> unplaced, ValueList<string> contradiction)
    {
        this.facts = facts;
        this.unplaced = unplaced;
        At = new PointRange?[facts.Demands.Count];
        var byKey = new Dictionary<string, DemandFacts>(StringComparer.Ordinal);
        foreach (var demand in facts.Demands)
            byKey.TryAdd(demand.Key, demand);

        var last = -1;
        foreach (var placement in placements)
        {
            if (!byKey.TryGetValue(placement.Demand, out var demand))
                problems.Add($"{placement.Demand} is placed, but the show has no such demand.");
            else if (At[demand.Index] is not null)
                problems.Add($"{demand.Key} is placed twice.");
            else if (demand.Index < last)
                problems.Add($"{demand.Key} stands out of order in the list of placements.");

            if (demand is not null)
            {
                At[demand.Index] ??= placement.At;
                last = demand.Index;
            }
        }

        foreach (var key in unplaced.Select(entry => entry.Demand).Concat(contradiction).Where(key => !byKey.ContainsKey(key)).Distinct())
            problems.Add($"{key} is said to be unplaced, but the show has no such demand.");
    }

    /// <summary>For each demand the run it is said to stand at; null when it is not placed.</summary>
    public PointRange?[] At { get; }

    public IReadOnlyList<string> Problems => problems;

    /// <summary>Compares what is said to fail with what fails.</summary>
    public void Compare(IReadOnlyList<(DemandFacts Demand, PointRange? Sink)> failed)
    {
        var said = unplaced.Select(entry => (entry.Demand, entry.Sink)).ToList();
        foreach (var (demand, sink) in failed)
        {
            if (!said.Remove((demand.Key, sink)))
                problems.Add($"{Name(demand.Key, sink)} is not delivered and is missing from the list of unplaced demands.");
        }

        // What is left over was said to fail and does not, or was said twice.
        foreach (var (key, sink) in said.Where(entry => facts.Demands.Any(demand => demand.Key == entry.Demand)))
            problems.Add($"{Name(key, sink)} is said to be unplaced, but is delivered or listed twice.");
    }

    private static string Name(string key, PointRange? sink) => sink is { } at ? $"{key} at {at}" : key;
}
