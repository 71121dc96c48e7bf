using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

[Trait("Speed", "slow")]
public class AssignerTests
{
    private const int SeedsPerChunk = 125;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    public static TheoryData<string> Cases => HandSolvedCases.All;

    public static TheoryData<int> Chunks => [.. Enumerable.Range(0, 32)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Instances_solved_on_paper_come_out_as_on_paper(string name)
    {
        var solved = HandSolvedCases.Load(name);

        var result = Engine.Assign(solved.Show, solved.Options);

        Assert.Equal(solved.Vector, result.Objective);
        Assert.Equal(solved.PinsContradict ? AssignmentStatus.PinsContradict : AssignmentStatus.Optimal, result.Status);
        Assert.Equal(solved.PinsContradict ? [solved.Contradiction] : default, result.Contradictions);
        Assert.Equal(
            solved.Placements.Select(placement => (placement.Demand, placement.At)),
            result.Placements.Select(placement => (placement.Demand, placement.At))
        );
        Assert.Equal(solved.Unplaced.Select(entry => entry.Demand).Distinct(), result.Unplaced.Select(entry => entry.Demand).Distinct());
        Assert.Equal(solved.Moved, result.Moved);
        Assert.All(result.Unplaced, entry => Assert.False(string.IsNullOrWhiteSpace(entry.Reason)));
        AssertVerified(solved.Show, result, solved.Options);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Assigning_a_result_again_changes_nothing(string name)
    {
        var solved = HandSolvedCases.Load(name);
        var once = Engine.Assign(solved.Show, solved.Options);

        var twice = Engine.Assign(once.Show, solved.Options);

        Assert.Equal(
            once.Placements.Select(placement => (placement.Demand, placement.At)),
            twice.Placements.Select(placement => (placement.Demand, placement.At))
        );
    }

    [Theory]
    [MemberData(nameof(Chunks))]
    public void Tiny_shows_come_out_as_well_as_anything_can(int chunk)
    {
        var wrong = Enumerable
            .Range(chunk * SeedsPerChunk, SeedsPerChunk)
            .Select(TinyInstances.Make)
            .SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny))
            .ToList();

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    /// <summary>
    /// Halves of a pair that hang on two blocks with the same slots; two split lines at one input, of a box that is not to be used;
    /// a second copy of a source that sends receivers away which no demand mentions, and changes less than moving both demands to it.
    /// </summary>
    [Theory]
    [InlineData(702087)]
    [InlineData(711063)]
    [InlineData(42001550)]
    public void Tiny_shows_found_by_exploring_come_out_as_well_as_anything_can(int seed) =>
        Assert.Equal([], TinyAgreement.Wrong(Engine, TinyInstances.Make(seed)));

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(200)]
    public void A_small_budget_claims_no_more_than_is_true(long budget)
    {
        var wrong = new List<string>();
        for (var seed = 0; seed < SeedsPerChunk * 5; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var options = tiny.Options with { Budget = budget };
            var best = BruteForce.Solve(tiny.Show, options).Vector;
            var result = Engine.Assign(tiny.Show, options);
            for (var place = 0; best is not null && result.Objective is { } found && place < result.ProvenNumbers; place++)
            {
                var at = place < 6 || options.Order.IsEmpty ? place : 6 + (int)options.Order[place - 6];
                if (best.Values[at] != found.Values[at])
                {
                    wrong.Add($"{tiny}: {result.ProvenNumbers} numbers of {found} are said to be proven, the best is {best}");
                    break;
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    private static VerificationResult Verify(Show input, AssignmentResult result, AssignmentOptions options) =>
        AssignmentVerifier.Verify(
            input,
            result.Show,
            result.Placements,
            result.Unplaced,
            options,
            id => Engine.Profiles.Find(id)?.Value,
            result.Contradictions.SelectMany(set => set).Order(StringComparer.Ordinal).ToValueList()
        );

    private static void AssertVerified(Show input, AssignmentResult result, AssignmentOptions options)
    {
        var verified = Verify(input, result, options);
        Assert.Equal([], verified.Problems);
        Assert.Equal(result.Objective, verified.Vector);
    }
}
