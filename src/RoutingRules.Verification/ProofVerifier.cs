using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Counts anew how good a result could be at best, from the document alone, and says how much of a proof that confirms.</summary>
/// <remarks>
/// The certificates are counts: a matching of demands to points for what fails, what must leave a barred place for what moves, the smallest numbers
/// for the sum of numbers, and zero for the rest. They are weaker than a search: what they do not confirm is not wrong, only not proved
/// independently. Whether the result itself keeps the rules says <see cref="AssignmentVerifier"/>. Thread safe.
/// </remarks>
public static class ProofVerifier
{
    private const int Tiers = 4;
    private const int BeforeLevels = 6;

    /// <summary>How many numbers, from the first on in the order of the options, no result can go below.</summary>
    /// <param name="input">The show that was assigned.</param>
    /// <param name="vector">The numbers of the result.</param>
    /// <param name="options">What the assignment was asked for.</param>
    /// <param name="profiles">Finds profiles that are not written into the show; null for one nobody knows.</param>
    public static int ConfirmedNumbers(Show input, ObjectiveVector vector, AssignmentOptions options, Func<Id<DeviceProfile>, DeviceProfile?> profiles)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(vector);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(profiles);
        var least = Least(new AssignmentFacts(input, options, profiles), vector);
        var confirmed = 0;

        // Who fails is decided before the levels and not counted here.
        var end = vector.Values.Take(Tiers).Any(value => value > 0) ? BeforeLevels : ObjectiveVector.Length;
        while (confirmed < end && vector.Values[Place(confirmed, options)] == least[Place(confirmed, options)])
            confirmed++;

        return confirmed;
    }

    private static int Place(int at, AssignmentOptions options) =>
        at < BeforeLevels || options.Order.IsEmpty ? at : BeforeLevels + (int)options.Order[at - BeforeLevels];

    /// <summary>A number for each place of the vector that nothing goes below, as long as all places before meet theirs.</summary>
    private static int[] Least(AssignmentFacts facts, ObjectiveVector vector)
    {
        var least = new int[ObjectiveVector.Length];
        var matching = new PointMatching();
        var (forced, widest, stuck) = (0, 1, 0);
        for (var tier = 0; tier < Tiers; tier++)
        {
            foreach (var demand in facts.Demands.Where(demand => (int)demand.Priority == tier))
            {
                var runs = Usable(facts, demand);
                if (runs.Count == 0)
                {
                    forced += demand.Deliveries;
                    continue;
                }

                widest = Math.Max(widest, demand.Width);
                for (var half = 0; half < demand.Width; half++)
                    stuck += matching.Add(runs.Select(run => run[half])) ? 0 : 1;
            }

            // A demand left out frees no more points than it is wide.
            var failed = forced + ((stuck + widest - 1) / widest);
            least[tier] = Math.Max(0, failed - vector.Values.Take(tier).Sum());
        }

        foreach (var demand in facts.Demands)
        {
            var runs = Usable(facts, demand);
            if (demand.Existing is { } existing && !runs.Contains(existing))
                least[demand.IsHeld ? 4 : 5]++;
        }

        if (vector.Values.Take(Tiers).All(value => value == 0))
            least[BeforeLevels + (int)ObjectiveLevel.Numbers] = facts.Demands.Sum(demand =>
                Usable(facts, demand).Select(run => run.First).DefaultIfEmpty(0).Min()
            );

        return least;
    }

    private static List<PointRange> Usable(AssignmentFacts facts, DemandFacts demand)
    {
        if (demand.Feed is { } feed && facts.IsExcluded(feed.Source))
            return [];

        var runs = demand.IsSplit ? [demand.Runs[0]] : demand.Runs.ToList();
        if (demand.Existing is { } existing && !runs.Contains(existing))
            runs.Add(existing);

        return runs.FindAll(run => !facts.IsExcluded(run) && (demand.IsPinned || Enumerable.Range(0, run.Width).All(i => facts.Rig.IsUsable(run[i]))));
    }
}
