using RoutingRules.Assignment;
using RoutingRules.Tests.Assignment;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Exploring;

/// <summary>All experiments: results against trying everything, against the verifier, and against a second run.</summary>
internal static class Experiments
{
    public static IReadOnlyList<Experiment> All { get; } =
    [
        new() { Name = "tiny", Wrong = seed => BestAndAgain(TinyInstances.Make(seed)) },
        new() { Name = "varied", Wrong = seed => Best(VariedInstances.Make(seed)) },
        new() { Name = "pinned", Wrong = seed => Best(PointedInstances.FreePins(seed)) },
        new() { Name = "kept", Wrong = seed => Best(PointedInstances.KeptPairs(seed)) },
        new() { Name = "contradicting", Wrong = seed => Best(PointedInstances.Contradictions(seed)) },
        new() { Name = "blocks", Wrong = seed => Claimed(PointedInstances.Blocks(seed)) },
        new() { Name = "grown", Wrong = seed => Again(GrownInstances.Make(seed)) },
        new() { Name = "made", Wrong = seed => Again(MadeInstances.Make(seed)) },
    ];

    private static IEnumerable<string> Best(TinyInstance tiny) => TinyAgreement.Wrong(Promise.Engine, tiny);

    private static IEnumerable<string> BestAndAgain(TinyInstance tiny) => Best(tiny).Concat(Again(tiny));

    // Offsets of blocks are not all tried; so only what is claimed must be true.
    private static IEnumerable<string> Claimed(TinyInstance tiny)
    {
        var result = AssignCases.Assign(tiny.Show, tiny.Options);
        return result is { ProvenNumbers: 0, Status: AssignmentStatus.Feasible } ? Verdict(tiny, result) : Best(tiny);
    }

    private static IEnumerable<string> Again(TinyInstance tiny)
    {
        var result = AssignCases.Assign(tiny.Show, tiny.Options);
        return Verdict(tiny, result).Concat(SecondRun.Differs(tiny, result) is { } differs ? [differs] : []);
    }

    private static IEnumerable<string> Verdict(TinyInstance tiny, AssignmentResult result) =>
        AssignCases.Verdict(tiny.Show, result, tiny.Options) is { } verdict ? [verdict] : [];
}
