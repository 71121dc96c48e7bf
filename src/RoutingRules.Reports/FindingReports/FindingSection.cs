using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Findings that stand together in a report for people.</summary>
/// <param name="Title">What stands above them.</param>
/// <param name="Findings">The findings, the gravest first, then by rule.</param>
/// <param name="IsMixed">True where they are of several severities, so that each rule says its own.</param>
internal sealed record FindingSection(string Title, List<Finding> Findings, bool IsMixed)
{
    /// <summary>From more findings than this on, a report begins with how many there are of each rule.</summary>
    public const int MostUncounted = 20;

    private static readonly (Severity Severity, string Title)[] WorstFirst =
    [
        (Severity.Error, "Errors"),
        (Severity.Warning, "Warnings"),
        (Severity.Note, "Notes"),
    ];

    /// <summary>The sections of a document by gravity, without empty ones: what can hurt somebody's ears first, then errors, warnings and notes.</summary>
    /// <param name="document">The document.</param>
    /// <param name="findings">Those of its findings that are to be told.</param>
    public static List<FindingSection> Of(DocumentCheck document, IEnumerable<Finding> findings)
    {
        var hearing = document.Result.Rules.Where(rule => rule.Descriptor.Family == RuleFamily.Hearing).Select(rule => rule.Descriptor.Id).ToHashSet();
        var open = findings.ToLookup(finding => hearing.Contains(finding.Rule));
        var sections = new List<FindingSection> { new("Hearing", [.. open[true].OrderByDescending(finding => finding.Severity)], true) };
        foreach (var (severity, title) in WorstFirst)
        {
            sections.Add(new FindingSection(title, [.. open[false].Where(finding => finding.Severity == severity)], false));
        }

        sections.RemoveAll(static section => section.Findings.Count == 0);
        return sections;
    }

    /// <summary>A rule as the section names it.</summary>
    public string Rule(Finding finding) => $"{finding.Rule} {finding.Name}{(IsMixed ? $" ({PlainText.Word(finding.Severity)})" : "")}";

    /// <summary>How many findings there are of each rule, the most first; null where they are few enough to be seen at a glance.</summary>
    public static string? CountsByRule(DocumentCheck document)
    {
        if (document.Result.Findings.Count <= MostUncounted)
        {
            return null;
        }

        var rules = document.Result.Findings.GroupBy(finding => $"{finding.Rule} {finding.Name}").ToList();
        var counts = rules
            .Where(rule => rule.Count() > 1)
            .OrderByDescending(rule => rule.Count())
            .ThenBy(rule => rule.Key, StringComparer.Ordinal)
            .Select(rule => FormattableString.Invariant($"{rule.Key} {rule.Count()}"))
            .ToList();
        var single = rules.Count - counts.Count;
        if (single > 0)
        {
            counts.Add(FormattableString.Invariant($"{single} {(single == 1 ? "rule" : "rules")} with one"));
        }

        return $"By rule: {string.Join(", ", counts)}.";
    }
}
