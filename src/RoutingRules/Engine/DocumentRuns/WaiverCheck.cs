using System.Globalization;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>Finds what is wrong with waivers and baselines beyond their form, so that no slip of the pen excuses or hides something.</summary>
public static class WaiverCheck
{
    /// <summary>
    /// What is wrong with waivers: unknown rules, rules that cannot be waived, patterns that can never fit, blank texts, the same thing waived twice.
    /// </summary>
    /// <returns>Findings with the pointers of their places; empty when all is well.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="list"/> is null.</exception>
    public static ValueList<Finding> Problems(WaiverList list, ValueList<RuleDescriptor> catalogue)
    {
        ArgumentNullException.ThrowIfNull(list);
        var problems = new List<Finding>();
        var seen = new Dictionary<(string Rule, string? Fingerprint, ValueList<Entity> Entities, ValueList<string> Scope), int>();
        for (var i = 0; i < list.Waivers.Count; i++)
        {
            var waiver = list.Waivers[i];
            var at = string.Create(CultureInfo.InvariantCulture, $"/waivers/{i}");
            var rule = catalogue.FirstOrDefault(rule => rule.Id == waiver.Rule || rule.Name == waiver.Rule);
            if (rule is null)
            {
                problems.Add(ReadingRules.Malformed($"There is no rule '{waiver.Rule}' to waive; correct the name.", $"{at}/rule"));
            }
            else if (IsFixed(rule))
            {
                problems.Add(
                    ReadingRules.Malformed(
                        $"Rule {rule.Id} ({rule.Name}) cannot be waived: what cannot be read, and what waivers come to, always counts. Take the waiver out.",
                        $"{at}/rule"
                    )
                );
            }

            Blank(waiver.Reason, "reason", at, problems);
            Blank(waiver.Owner, "owner", at, problems);
            for (var j = 0; j < waiver.Scope.Count; j++)
            {
                if (PathPattern.Problem(waiver.Scope[j]) is { } problem)
                {
                    problems.Add(
                        ReadingRules.Malformed(
                            $"The pattern '{waiver.Scope[j]}' can never fit: {problem}.",
                            string.Create(CultureInfo.InvariantCulture, $"{at}/scope/{j}")
                        )
                    );
                }
            }

            if (!seen.TryAdd((rule?.Id ?? waiver.Rule, waiver.Fingerprint, waiver.Entities, waiver.Scope), i))
            {
                problems.Add(
                    ReadingRules.Malformed("This waives what another waiver of the list waives already, for the same documents; keep one of them.", at)
                );
            }
        }

        return problems.ToValueList();
    }

    /// <summary>What is wrong with a baseline: a document or an identity that stands in it twice.</summary>
    /// <returns>Findings with the pointers of their places; empty when all is well.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="baseline"/> is null.</exception>
    public static ValueList<Finding> Problems(Baseline baseline)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        var problems = new List<Finding>();
        var paths = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < baseline.Documents.Count; i++)
        {
            var document = baseline.Documents[i];
            if (!paths.Add(document.Path))
            {
                problems.Add(
                    ReadingRules.Malformed(
                        $"The document '{document.Path}' stands in the baseline twice; put its findings together.",
                        string.Create(CultureInfo.InvariantCulture, $"/documents/{i}/path")
                    )
                );
            }

            var known = new HashSet<(string Rule, string Fingerprint)>();
            for (var j = 0; j < document.Findings.Count; j++)
            {
                if (!known.Add((document.Findings[j].Rule, document.Findings[j].Fingerprint)))
                {
                    problems.Add(
                        ReadingRules.Malformed(
                            "This finding stands in the document's list twice; take one of them out.",
                            string.Create(CultureInfo.InvariantCulture, $"/documents/{i}/findings/{j}")
                        )
                    );
                }
            }
        }

        return problems.ToValueList();
    }

    /// <summary>Rules whose findings always count: those of reading and those about waivers.</summary>
    internal static bool IsFixed(RuleDescriptor rule) => StandingRules.All.Contains(rule);

    private static void Blank(string text, string member, string at, List<Finding> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            problems.Add(ReadingRules.Malformed($"The {member} is blank; write it out.", $"{at}/{member}"));
        }
    }
}
