using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>What the reader found, put together with what the rules found.</summary>
internal static class ReadingResults
{
    /// <summary>True when places in the text that was checked are none in the text that people have.</summary>
    public static bool IsUpgraded(ValueList<Finding> findings)
    {
        foreach (var finding in findings)
        {
            if (finding.Rule == ReadingRules.FormatUpgraded.Id)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>No rule was run: each is undecided, and the reason is given once.</summary>
    public static CheckResult Unread(RoutingEngine engine, ValueList<Finding> findings) =>
        new()
        {
            Findings = Merge(findings, default),
            Rules =
            [
                .. Outcomes(findings, RuleStatus.Undecided),
                .. engine.Checker.Rules.Select(active => new RuleOutcome
                {
                    Descriptor = active.Rule.Descriptor,
                    Status = RuleStatus.Undecided,
                    Subjects = 0,
                    WorkUnits = 0,
                }),
            ],
            Undecided =
            [
                new UndecidedSubject
                {
                    Rule = DocumentCheck.EveryRule,
                    Subject = "",
                    Reason = "The document could not be read in full, so no rule was run on it.",
                },
            ],
            WasRead = false,
        };

    public static IEnumerable<RuleOutcome> Outcomes(ValueList<Finding> findings, RuleStatus otherwise) =>
        ReadingRules.All.Select(rule => new RuleOutcome
        {
            Descriptor = rule,
            Status = findings.Any(finding => finding.Rule == rule.Id) ? RuleStatus.Found : otherwise,
            Subjects = 1,
            WorkUnits = 0,
        });

    public static ValueList<Finding> Merge(ValueList<Finding> reading, ValueList<Finding> rules)
    {
        var all = new List<Finding>([.. reading, .. rules]);
        FindingIdentity.MakeDistinct(all);
        all.Sort(FindingOrder.Instance);
        return all.ToValueList();
    }
}
