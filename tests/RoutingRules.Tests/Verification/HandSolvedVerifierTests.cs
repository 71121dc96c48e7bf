using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Verification;

public class HandSolvedVerifierTests
{
    public static TheoryData<string> Cases => HandSolvedCases.All;

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_verifier_counts_the_vector_found_on_paper_and_has_no_complaint(string name)
    {
        var solved = HandSolvedCases.Load(name);

        var verified = AssignmentVerifier.Verify(
            solved.Show,
            solved.Result,
            solved.Placements,
            solved.Unplaced,
            solved.Options,
            _ => null,
            solved.Contradiction
        );

        Assert.Equal([], verified.Problems);
        Assert.Equal(solved.Vector?.ToString(), verified.Vector?.ToString());
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_trace_finds_what_the_paper_says_each_output_and_channel_carries(string name)
    {
        var solved = HandSolvedCases.Load(name);
        var rig = new RigFacts(solved.Show, _ => null, []);
        var outputs = rig.Devices.SelectMany(device => device.Groups).Where(group => group.Kind == PortKind.Output).Sum(group => group.Count);

        Assert.Equal(outputs, solved.InputOutputs.Count);
        Assert.Equal(outputs, solved.ResultOutputs.Count);
        Compare(new PatchTrace(rig, solved.Show.Patch), solved.InputOutputs);
        Compare(new PatchTrace(rig, solved.Result.Patch), solved.ResultOutputs);
        Compare(new PatchTrace(rig, solved.Result.Patch), solved.ResultChannels);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Moved_demands_are_those_the_paper_names(string name)
    {
        var solved = HandSolvedCases.Load(name);
        var facts = new AssignmentFacts(solved.Show, solved.Options, _ => null);
        var at = solved.Placements.ToDictionary(placement => placement.Demand, placement => placement.At);

        var moved = facts
            .Demands.Where(demand => demand.Existing is { } existing && (!at.TryGetValue(demand.Key, out var now) || now != existing))
            .Select(demand => demand.Key);

        Assert.Equal(solved.Moved, moved);
    }

    private static void Compare(PatchTrace trace, ValueList<(PointRange At, PointRange? Source)> carried)
    {
        foreach (var (at, source) in carried)
        {
            for (var i = 0; i < at.Width; i++)
                Assert.Equal((at[i], source?[i]), (at[i], trace.Source(at[i])));
        }
    }
}
