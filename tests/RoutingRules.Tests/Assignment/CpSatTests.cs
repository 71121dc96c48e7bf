using RoutingRules.Assignment;
using RoutingRules.Strategies.CpSat;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>The constraint solver as a second opinion: it shares neither a search nor a wiring with the default strategy.</summary>
public class CpSatTests
{
    private const int SeedsPerChunk = 50;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddPlugin(new CpSatPlugin()).Build();

    public static TheoryData<string> Cases => HandSolvedCases.All;

    public static TheoryData<int> Chunks => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Instances_solved_on_paper_come_out_as_on_paper(string name)
    {
        var solved = HandSolvedCases.Load(name);

        var result = Engine.Assign(solved.Show, solved.Options with { Strategy = "cp-sat" });

        Assert.Equal(solved.Vector, result.Objective);
        Assert.Equal(solved.PinsContradict ? [solved.Contradiction] : default, result.Contradictions);
        Assert.Equal(solved.Unplaced.Select(entry => entry.Demand).Distinct(), result.Unplaced.Select(entry => entry.Demand).Distinct());
    }

    [Theory]
    [MemberData(nameof(Chunks))]
    public void Tiny_shows_come_out_as_with_the_default_strategy_and_as_trying_everything_says(int chunk)
    {
        var wrong = new List<string>();
        for (var seed = chunk * SeedsPerChunk; seed < (chunk + 1) * SeedsPerChunk; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            if (Disagreement(tiny) is { } disagreement)
                wrong.Add($"{tiny}: {disagreement}");
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    private static string? Disagreement(TinyInstance tiny)
    {
        var options = tiny.Options with { Strategy = "cp-sat" };
        try
        {
            var best = BruteForce.Solve(tiny.Show, tiny.Options);
            var usual = Engine.Assign(tiny.Show, tiny.Options);
            var result = Engine.Assign(tiny.Show, options);
            var left = result.Contradictions.SelectMany(set => set).Order(StringComparer.Ordinal).ToArray();
            var verified = AssignmentVerifier.Verify(tiny.Show, result.Show, result.Placements, result.Unplaced, options, _ => null, [.. left]);
            if (best.Vector?.ToString() == result.Objective?.ToString()
                && usual.Objective == result.Objective
                && (result.Status == AssignmentStatus.Optimal || result.Objective is null)
                && verified.Problems.Count == 0)
                return null;

            return $"everything {best.Vector}, default {usual.Objective}, solver {result.Objective} with {result.ProvenNumbers} proven, verifier {string.Join("; ", verified.Problems)}";
        }
        catch (Exception fault) when (fault is InvalidProposalException or UnsupportedAssignmentException)
        {
            return fault.Message;
        }
    }
}
