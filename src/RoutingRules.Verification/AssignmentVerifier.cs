using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Looks at the result of an assignment with the document alone, by its own trace, and shares no code with what computed it.</summary>
/// <remarks>
/// Checks every hard rule of the assignment problem and counts the objective from the patch. Whether something better exists it does not say. Thread safe.
/// </remarks>
public static class AssignmentVerifier
{
    /// <summary>Checks a result.</summary>
    /// <param name="input">The show that was assigned.</param>
    /// <param name="result">The show that came out.</param>
    /// <param name="placements">Where each placed demand is said to be.</param>
    /// <param name="unplaced">What is said to be unplaced.</param>
    /// <param name="options">What the assignment was asked for.</param>
    /// <param name="profiles">Finds profiles that are not written into the show; null for one nobody knows.</param>
    /// <param name="contradiction">Demands whose pins are said to contradict; empty when none do.</param>
    public static VerificationResult Verify(
        Show input,
        Show result,
        ValueList<Placement> placements,
        ValueList<UnplacedDemand> unplaced,
        AssignmentOptions options,
        Func<Id<DeviceProfile>, DeviceProfile?> profiles,
        ValueList<string> contradiction = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(profiles);
        return Verify(new AssignmentFacts(input, options, profiles), result, placements, unplaced, contradiction);
    }

    /// <summary>
    /// Checks a whole result: its patch, and what it says about itself (numbers, flags, lists of what moved, was removed, silenced or cleared).
    /// </summary>
    /// <param name="input">The show that was assigned.</param>
    /// <param name="result">What came out.</param>
    /// <param name="options">What the assignment was asked for.</param>
    /// <param name="profiles">Finds profiles that are not written into the show; null for one nobody knows.</param>
    public static VerificationResult Verify(Show input, AssignmentResult result, AssignmentOptions options, Func<Id<DeviceProfile>, DeviceProfile?> profiles)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(profiles);
        return Verify(new AssignmentFacts(input, options, profiles), result);
    }

    /// <summary>Checks a whole result against an input that is already laid out.</summary>
    internal static VerificationResult Verify(AssignmentFacts facts, AssignmentResult result)
    {
        var contradiction = result.Contradictions.SelectMany(set => set).Distinct().ToValueList();
        var verified = Verify(facts, result.Show, result.Placements, result.Unplaced, contradiction);
        return verified with { Problems = verified.Problems.Concat(ClaimsCheck.Problems(facts, result, verified)).ToValueList() };
    }

    /// <summary>Checks a result against an input that is already laid out.</summary>
    internal static VerificationResult Verify(
        AssignmentFacts facts,
        Show result,
        ValueList<Placement> placements,
        ValueList<UnplacedDemand> unplaced,
        ValueList<string> contradiction
    )
    {
        var account = new AccountCheck(facts, placements, unplaced, contradiction);
        var check = new ResultCheck(facts, result, account.At, contradiction);
        check.Run();
        account.Compare(check.Failed);
        return new VerificationResult
        {
            Vector = contradiction.IsEmpty ? check.Vector : null,
            Problems = account.Problems.Concat(check.Problems).ToValueList(),
        };
    }
}
