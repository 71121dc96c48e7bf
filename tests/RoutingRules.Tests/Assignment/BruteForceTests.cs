using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

public class BruteForceTests
{
    public static TheoryData<string> Cases => HandSolvedCases.All;

    [Theory]
    [MemberData(nameof(Cases))]
    public void Trying_everything_finds_nothing_better_than_the_paper_and_nothing_worse(string name)
    {
        var solved = HandSolvedCases.Load(name);

        var found = BruteForce.Solve(solved.Show, solved.Options);

        Assert.Equal(solved.Vector?.ToString(), found.Vector?.ToString());
        Assert.Equal(solved.PinsContradict ? [solved.Contradiction] : default, found.Contradictions);
        if (!solved.PinsContradict)
            Assert.Equal(solved.Unplaced.Select(entry => entry.Demand).Distinct(), found.Failed);
    }

    [Fact]
    public void The_best_of_tiny_shows_passes_the_verifier_that_also_judges_holds()
    {
        for (var seed = 0; seed < 150; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var found = BruteForce.Solve(tiny.Show, tiny.Options);
            if (found.Show is not { } show)
                continue;

            var verified = AssignmentVerifier.Verify(tiny.Show, show, found.Placements, found.Unplaced, tiny.Options, _ => null);

            Assert.Equal([], verified.Problems.Select(problem => $"{tiny}: {problem}"));
            Assert.Equal(found.Vector, verified.Vector);
        }
    }

    [Fact]
    public void No_patch_near_the_best_is_valid_and_better()
    {
        var valid = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var found = BruteForce.Solve(tiny.Show, tiny.Options);
            if (found.Show is not { } best)
                continue;

            var facts = new AssignmentFacts(tiny.Show, tiny.Options, _ => null);
            var mutations = new TinyMutations(new TinyDice(seed), facts);
            for (var i = 0; i < 60; i++)
            {
                var show = mutations.Mutate(best);
                var (at, _) = mutations.Serve(show);
                var check = new ResultCheck(facts, show, at, []);
                check.Run();
                if (check.Problems.Count > 0)
                    continue;

                valid++;
                var failed = check.Failed.Select(entry => entry.Demand.Key).Distinct().ToValueList();
                Assert.True(
                    Compare(facts, tiny.Options, check.Vector, failed, found) >= 0,
                    $"{tiny}: {check.Vector} failed {failed} beats {found.Vector} failed {found.Failed}"
                );
            }
        }

        Assert.True(valid > 500, $"Only {valid} changed patches were valid.");
    }

    [Fact]
    public void Assigning_the_best_again_moves_nothing_and_loses_nothing()
    {
        for (var seed = 0; seed < 150; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            if (SharesSources(tiny.Show) || BruteForce.Solve(tiny.Show, tiny.Options) is not { Show: { } show } found)
                continue;

            var again = BruteForce.Solve(show, tiny.Options);

            Assert.Equal(
                (tiny.ToString(), found.Vector!.Values.Take(4).ToValueList(), found.Failed),
                (tiny.ToString(), again.Vector!.Values.Take(4).ToValueList(), again.Failed)
            );
            Assert.Equal((tiny.ToString(), 0, 0), (tiny.ToString(), again.Vector.Values[4], again.Vector.Values[5]));
        }
    }

    // Where two demands want one signal, the trace cannot tell which of them an output serves.
    private static bool SharesSources(Show show)
    {
        var sources = show.Feeds.SelectMany(feed => feed.To.SelectMany(_ => Enumerable.Range(0, feed.Source.Width).Select(i => feed.Source[i]))).ToList();
        return sources.Distinct().Count() < sources.Count;
    }

    private static int Compare(AssignmentFacts facts, AssignmentOptions options, ObjectiveVector vector, ValueList<string> failed, BruteForceResult best)
    {
        foreach (var i in (int[])[4, 0, 1, 2, 3, 5])
        {
            if (vector.Values[i] != best.Vector!.Values[i])
                return vector.Values[i].CompareTo(best.Vector.Values[i]);
        }

        var order = facts.Demands.Select(demand => demand.Key).ToList();
        foreach (var (one, other) in failed.Zip(best.Failed).Where(pair => pair.First != pair.Second))
            return order.IndexOf(other).CompareTo(order.IndexOf(one));

        return failed.Count != best.Failed.Count ? failed.Count.CompareTo(best.Failed.Count) : vector.CompareTo(best.Vector!, options.Order);
    }
}
