using RoutingRules.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>Compares what the engine makes of a tiny show with what trying everything finds, and with what the verifier says.</summary>
internal static class TinyAgreement
{
    /// <summary>What the two disagree on; empty when nothing.</summary>
    public static IEnumerable<string> Wrong(RoutingEngine engine, TinyInstance tiny)
    {
        var best = BruteForce.Solve(tiny.Show, tiny.Options);
        var result = engine.Assign(tiny.Show, tiny.Options);
        if (best.Vector?.ToString() != result.Objective?.ToString())
            yield return $"{tiny}: best {best.Vector}, found {result.Objective} ({result.Status})";
        else if (best.Vector is not null && !best.Failed.SequenceEqual(result.Unplaced.Select(entry => entry.Demand).Distinct()))
            yield return $"{tiny}: best leaves out {best.Failed}, found leaves out {string.Join(", ", result.Unplaced.Select(entry => entry.Demand))}";
        else if (best.Vector is not null && result.Status != AssignmentStatus.Optimal)
            yield return $"{tiny}: as good as anything can be, but only {result.ProvenNumbers} numbers are said to be proven";
        else if (best.Vector is null && !result.Contradictions.All(set => best.Contradictions.Contains(set)))
            yield return $"{tiny}: pins {result.Contradictions} are not one of the smallest contradictions {best.Contradictions}";

        var contradiction = result.Contradictions.SelectMany(set => set).Order(StringComparer.Ordinal).ToArray();
        var verified = AssignmentVerifier.Verify(tiny.Show, result.Show, result.Placements, result.Unplaced, tiny.Options, _ => null, [.. contradiction]);
        if (!verified.IsValid || verified.Vector != result.Objective)
            yield return $"{tiny}: verifier counts {verified.Vector} for {result.Objective} and says {string.Join("; ", verified.Problems)}";
    }
}
