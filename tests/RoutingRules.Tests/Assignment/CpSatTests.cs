using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Strategies.CpSat;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>The constraint solver as a second opinion: it shares neither a search nor a wiring with the default strategy.</summary>
[Trait("Speed", "slow")]
public class CpSatTests
{
    private const int SeedsPerChunk = 50;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddPlugin(new CpSatPlugin()).Build();

    public static TheoryData<string> Cases => HandSolvedCases.All;

    public static TheoryData<int> Chunks => [.. Enumerable.Range(0, 6)];

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

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Tiny_shows_with_narrow_links_come_out_as_with_the_default_strategy_and_as_trying_everything_says(int chunk)
    {
        var wrong = new List<string>();
        for (var seed = chunk * SeedsPerChunk; seed < (chunk + 1) * SeedsPerChunk; seed++)
        {
            var tiny = NarrowInstances.Make(seed);
            if (Disagreement(tiny) is { } disagreement)
                wrong.Add($"{tiny}: {disagreement}");
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Theory]
    [InlineData("stage-box")]
    [InlineData("console")]
    [InlineData("both")]
    public void Routing_in_blocks_comes_out_as_with_the_default_strategy(string where)
    {
        var wrong = new List<string>();
        var changed = 0;
        for (var seed = 0; seed < 120; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var show = InBlocks(tiny.Show, where);
            if (show == tiny.Show)
                continue;

            changed++;
            var usual = Engine.Assign(show, tiny.Options);
            var result = Engine.Assign(show, tiny.Options with { Strategy = "cp-sat" });
            if (usual.Objective != result.Objective)
                wrong.Add($"{tiny}: default {usual.Objective} with {usual.ProvenNumbers} proven, solver {result.Objective} with {result.ProvenNumbers} proven");
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.InRange(changed, 10, 120);
    }

    /// <summary>The show with free routing of some devices turned into routing in blocks of two.</summary>
    private static Show InBlocks(Show show, string where) =>
        show with
        {
            Rig = show.Rig with
            {
                Profiles = show
                    .Rig.Profiles.Select(profile =>
                        (profile.Kind == DeviceKind.StageBox && where != "console") || (profile.Kind == DeviceKind.Console && where != "stage-box")
                            ? profile with
                            {
                                Routing = profile.Routing.Select(InBlocks).ToValueList(),
                            }
                            : profile
                    )
                    .ToValueList(),
            },
        };

    private static RoutingEntry InBlocks(RoutingEntry entry) =>
        entry.Mode == RoutingMode.Free && (entry.To.Value == "transmit" || entry.To.Value == "out")
            ? entry with
            {
                Mode = RoutingMode.Block,
                BlockSize = 2,
            }
            : entry;

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
            if (
                best.Vector?.ToString() == result.Objective?.ToString()
                && usual.Objective == result.Objective
                && (result.Status == AssignmentStatus.Optimal || result.Objective is null)
                && verified.Problems.Count == 0
            )
                return null;

            return $"everything {best.Vector}, default {usual.Objective}, solver {result.Objective} with {result.ProvenNumbers} proven, verifier "
                + $"{string.Join("; ", verified.Problems)}";
        }
        catch (Exception fault) when (fault is InvalidProposalException or UnsupportedAssignmentException)
        {
            return fault.Message;
        }
    }
}
