using RoutingRules.Rules;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>Whether the absence of a finding means anything.</summary>
internal static class Judgement
{
    /// <summary>True when a rule ran on a document and could decide about all of it.</summary>
    public static bool IsDecided(CheckResult result, string rule)
    {
        if (!result.WasRead || result.Undecided.Any(subject => subject.Rule == rule))
        {
            return false;
        }

        foreach (var outcome in result.Rules)
        {
            if (outcome.Descriptor.Id == rule)
            {
                return outcome.Status != RuleStatus.Undecided;
            }
        }

        return false;
    }
}
