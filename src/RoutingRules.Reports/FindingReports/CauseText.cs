using System.Globalization;
using RoutingRules.Diagnosis;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The causes in the report for people: each with what to do and the findings that it explains.</summary>
internal static class CauseText
{
    /// <summary>The lines; none without causes.</summary>
    /// <param name="causes">The causes.</param>
    /// <param name="document">The document.</param>
    /// <param name="lowest">Findings milder than this are not listed.</param>
    public static IEnumerable<string> Lines(List<ToldCause> causes, DocumentCheck document, Severity lowest)
    {
        if (causes.Count == 0)
        {
            yield break;
        }

        yield return "";
        yield return "Causes";
        foreach (var cause in causes)
        {
            yield return "";
            yield return string.Create(CultureInfo.InvariantCulture, $"  {cause.Number}. {PlainText.Show(cause.Title)}.");
            yield return $"    What to do: {PlainText.Show(cause.Orders)}.";
            if (cause.Offered.Cause.Repair.Caution is { } caution)
            {
                yield return $"    Mind: {PlainText.Show(caution)}";
            }

            foreach (var choice in cause.Offered.Cause.Repair.Choices.ToList())
            {
                yield return $"      {PlainText.Show(choice)}";
            }

            yield return $"    Explains {PlainText.Count(cause.Findings.Count, "finding")}:";
            foreach (var finding in cause.Findings.Where(finding => finding.Severity >= lowest))
            {
                var place = PlainText.Place(PlainText.Show(document.PlacePath), finding);
                var rule = $"{PlainText.Word(finding.Severity)} {finding.Rule} {finding.Name}";
                yield return $"      {place}: {rule}: {PlainText.Show(finding.Message)}";
            }
        }

        if (causes.Exists(cause => cause.Confidence == CauseConfidence.Partial))
        {
            yield return "";
            yield return "  Not everything that could be a cause was tried: mend these, then check again.";
        }
    }
}
