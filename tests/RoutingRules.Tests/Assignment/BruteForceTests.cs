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
}
