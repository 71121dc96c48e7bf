using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Checking;

/// <summary>The findings of a show as it is, asked about those of the show changed or read otherwise.</summary>
internal sealed class KnownFindings
{
    private readonly Dictionary<string, Severity> severities = new(StringComparer.Ordinal);
    private readonly ILookup<string, Finding> byRule;

    public KnownFindings(ValueList<Finding> findings)
    {
        foreach (var finding in findings)
        {
            severities.TryAdd(finding.Fingerprint(), finding.Severity);
        }

        byRule = findings.ToLookup(finding => finding.Rule, StringComparer.Ordinal);
    }

    /// <summary>How serious a finding, or the larger one that it is left of, was; null when it is new.</summary>
    public Severity? SeverityOf(Finding finding)
    {
        if (severities.TryGetValue(finding.Fingerprint(), out var severity))
        {
            return severity;
        }

        foreach (var old in byRule[finding.Rule])
        {
            if (finding.IsPartOf(old))
            {
                return old.Severity;
            }
        }

        return null;
    }
}
