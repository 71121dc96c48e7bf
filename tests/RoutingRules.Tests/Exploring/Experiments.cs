using RoutingRules.Assignment;
using RoutingRules.Tests.Assignment;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Exploring;

/// <summary>All experiments: results against trying everything, against the verifier, and against a second run.</summary>
internal static class Experiments
{
    public static IReadOnlyList<Experiment> All { get; } =
    [
        new()
        {
            Name = "tiny",
            Make = TinyInstances.Make,
            Wrong = BestAndAgain,
        },
        new()
        {
            Name = "varied",
            Make = VariedInstances.Make,
            Wrong = Best,
        },
        new()
        {
            Name = "pinned",
            Make = PointedInstances.FreePins,
            Wrong = Best,
        },
        new()
        {
            Name = "kept",
            Make = PointedInstances.KeptPairs,
            Wrong = Best,
        },
        new()
        {
            Name = "contradicting",
            Make = PointedInstances.Contradictions,
            Wrong = Best,
        },
        new()
        {
            Name = "blocks",
            Make = PointedInstances.Blocks,
            Wrong = Claimed,
        },
        new()
        {
            Name = "grown",
            Make = GrownInstances.Make,
            Wrong = Again,
        },
        new()
        {
            Name = "made",
            Make = MadeInstances.Make,
            Wrong = Again,
        },
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
