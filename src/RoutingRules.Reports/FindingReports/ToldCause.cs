using RoutingRules.Diagnosis;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>A cause with those of its findings that count; one all of whose findings somebody lives with is not told.</summary>
internal sealed class ToldCause
{
    private ToldCause(OfferedCause offered, List<Finding> findings)
    {
        Offered = offered;
        Findings = findings;
    }

    public OfferedCause Offered { get; }

    /// <summary>The findings, in their order; a finding that several causes explain stands under the first.</summary>
    public List<Finding> Findings { get; }

    public int Number => Offered.Number;

    public string Title => Offered.Cause.Title;

    public CauseConfidence Confidence => Offered.Cause.Confidence;

    /// <summary>The repairs as orders, a tie with all of them.</summary>
    public string Orders =>
        Offered.Cause.Alternatives.IsEmpty
            ? Offered.Cause.Repair.Title
            : $"Either {string.Join(", or ", Offered.Cause.Alternatives.Select(fix => Small(fix.Title)).Prepend(Small(Offered.Cause.Repair.Title)))}";

    public static List<ToldCause> Of(DocumentCheck document)
    {
        var told = new List<ToldCause>();
        if (document.Causes.IsEmpty)
        {
            return told;
        }

        var open = new Dictionary<string, Finding>(StringComparer.Ordinal);
        foreach (var finding in document.Result.Findings)
        {
            open.TryAdd(finding.Fingerprint(), finding);
        }

        foreach (var cause in document.Causes)
        {
            var findings = new List<Finding>();
            foreach (var fingerprint in cause.Cause.Findings)
            {
                if (open.Remove(fingerprint, out var finding))
                {
                    findings.Add(finding);
                }
            }

            if (findings.Count > 0)
            {
                told.Add(new ToldCause(cause, findings));
            }
        }

        return told;
    }

    /// <summary>The findings that no cause explains, in their order.</summary>
    public static IReadOnlyList<Finding> Unexplained(DocumentCheck document, List<ToldCause> causes)
    {
        if (causes.Count == 0)
        {
            return document.Result.Findings;
        }

        var explained = causes.SelectMany(cause => cause.Findings).ToHashSet(ReferenceEqualityComparer.Instance);
        return [.. document.Result.Findings.Where(finding => !explained.Contains(finding))];
    }

    private static string Small(string order) => order.Length == 0 ? order : char.ToLowerInvariant(order[0]) + order[1..];
}
