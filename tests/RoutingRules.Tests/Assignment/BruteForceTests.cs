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
}
