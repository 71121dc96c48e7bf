using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment.Explaining;

public class ConflictPromises
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Property(MaxTest = 60)]
    public Property Conflicts_are_real_and_smallest() => Prop.ForAll(TinyInstances.Arbitrary, tiny => Check(tiny).Length == 0);

    [Fact]
    public void Conflicts_of_known_tiny_shows_are_real_and_smallest_and_there_are_enough_of_them()
    {
        var conflicts = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            Assert.Equal("", Check(tiny));
            conflicts += Assign(tiny).Unplaced.Count(entry => !entry.Conflict.IsEmpty);
        }

        Assert.InRange(conflicts, 10, int.MaxValue);
    }

    // A pin at a point that is left out stands nowhere, whatever else is placed.
    [Fact]
    public void A_pin_that_nothing_can_hold_conflicts_with_nobody() => Assert.Equal("", Check(TinyInstances.Make(2114055265)));

    private static AssignmentResult Assign(TinyInstance tiny) => Engine.Assign(tiny.Show, tiny.Options with { ExplainUnplaced = true });

    /// <summary>What the oracle, which tries everything, holds against the conflicts of a show; empty when nothing.</summary>
    private static string Check(TinyInstance tiny)
    {
        var result = Assign(tiny);
        if (result.Status == AssignmentStatus.PinsContradict || result.Objective!.Values[4] > 0)
        {
            return "";
        }

        foreach (var entry in result.Unplaced)
        {
            // A line that reaches some of its sinks is placed in part; the oracle is only asked about whole demands.
            var isWhole = result.Unplaced.All(other => other.Sink is null);
            if (entry.ConflictProof == ConflictProof.NotChecked || !isWhole)
            {
                continue;
            }

            if (CanPlace(tiny, [.. entry.Conflict, entry.Demand]))
            {
                return $"seed {tiny.Seed}: {entry.Demand} fits beside {entry.Conflict}";
            }

            if (entry.ConflictProof == ConflictProof.Counted && !IsCounted(tiny, entry))
            {
                return $"seed {tiny.Seed}: {entry.Demand} and {entry.Conflict} are not too many for {entry.ConflictPoints}";
            }

            foreach (var member in entry.Conflict)
            {
                if (!CanPlace(tiny, [.. entry.Conflict.Where(key => key != member), entry.Demand]))
                {
                    return $"seed {tiny.Seed}: {entry.Demand} does not fit beside {entry.Conflict} without {member}";
                }
            }
        }

        return "";
    }

    /// <summary>Whether some demands fit while all others are left out, and with them what the show names for those.</summary>
    private static bool CanPlace(TinyInstance tiny, IReadOnlyCollection<string> keys)
    {
        var others = new AssignmentFacts(tiny.Show, tiny.Options, _ => null).Demands.Select(demand => demand.Key).Where(key => !keys.Contains(key));
        return BruteForce.CanPlace(tiny.Show, tiny.Options with { LeaveOut = [.. others] }, keys);
    }

    /// <summary>Counts anew, with the verifier's reading of the document: points that the demands may use, and points that they need.</summary>
    private static bool IsCounted(TinyInstance tiny, UnplacedDemand entry)
    {
        var facts = new AssignmentFacts(tiny.Show, tiny.Options, _ => null);
        var (needed, points) = (0, entry.ConflictPoints.SelectMany(run => Enumerable.Range(0, run.Width).Select(i => run[i])).ToHashSet());
        var mayUse = new HashSet<Point>();
        foreach (var demand in facts.Demands.Where(demand => demand.Key == entry.Demand || entry.Conflict.Contains(demand.Key)))
        {
            needed += demand.Width;
            IEnumerable<PointRange> runs = demand is { IsHeld: true, Existing: { } held } ? [held] : demand.Runs;
            foreach (var run in runs.Where(run => demand.IsPinned || Enumerable.Range(0, run.Width).All(i => facts.Rig.IsUsable(run[i]))))
            {
                mayUse.UnionWith(Enumerable.Range(0, run.Width).Select(i => run[i]));
            }
        }

        // Points that no route reaches are allowed by the document and no use to anybody, so that there may be more of them.
        return needed > points.Count && points.IsSubsetOf(mayUse);
    }
}
