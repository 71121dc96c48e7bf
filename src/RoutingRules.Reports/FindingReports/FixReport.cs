using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Tells what mending a show came to.</summary>
public static class FixReport
{
    /// <summary>One line that says how it went.</summary>
    /// <param name="result">What mending came to.</param>
    /// <param name="after">The mended show with what remains, accepted findings set apart.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Heading(FixResult result, DocumentCheck after, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(after);
        var end =
            !result.Circle.IsEmpty ? $"; stopped, because fixes of {string.Join(", ", result.Circle)} undo one another"
            : result.IsStopped ? "; stopped after too many trials"
            : "";
        var accepted = after.Waived.Count + after.Known.Count;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{PlainText.Count(result.Applied.Count, "fix", "fixes")} {(isDry ? "would be taken" : "taken")}, {result.Refused.Count} not, "
                + $"{PlainText.Count(after.Result.Findings.Count, "finding")} "
                + $"left{(accepted == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {accepted} accepted"))}{end}"
        );
    }

    /// <summary>The account in words, for people; lines end with LF, and characters that could steer a terminal are written out.</summary>
    /// <param name="result">What mending came to.</param>
    /// <param name="after">The mended show with what remains: accepted findings set apart, choices for the others where they were asked for.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(FixResult result, DocumentCheck after, bool isDry)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{after?.Path}: {Heading(result, after!, isDry)}\n");
        for (var i = 0; i < result.Applied.Count; i++)
        {
            Add(text, i + 1, result.Applied[i]);
        }

        Head(text, "not taken", result.Refused.Count);
        foreach (var refused in result.Refused)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {refused.Finding.Rule} {refused.Title}\n    because {refused.Reason}\n");
        }

        Head(text, "left", after!.Result.Findings.Count);
        foreach (var finding in after.Result.Findings)
        {
            Add(text, finding);
            foreach (var fix in after.OffersFor(finding).Select(offer => offer.Fix))
            {
                text.Append(CultureInfo.InvariantCulture, $"    {PlainText.Word(fix.Safety)}: {fix.Title}\n");
                foreach (var choice in fix.Choices)
                {
                    text.Append(CultureInfo.InvariantCulture, $"      - {choice}\n");
                }
            }
        }

        Head(text, "accepted, and so not mended unless --rule names it", after.Waived.Count + after.Known.Count);
        foreach (var (finding, waiver) in after.Waived.Select(waived => (waived.Finding, waived.Waiver)))
        {
            Add(text, finding);
            text.Append(CultureInfo.InvariantCulture, $"    waived by {waiver.Owner} until {PlainText.Day(waiver.Expires)}: {waiver.Reason}\n");
        }

        foreach (var finding in after.Known)
        {
            Add(text, finding);
            text.Append("    known to the baseline\n");
        }

        return string.Join('\n', text.ToString().Split('\n').Select(PlainText.Show));
    }

    /// <summary>Writes the account as JSON after the published schema (<c>urn:routing-rules:fix:1</c>): indented UTF-8, LF, a line break at the end.</summary>
    /// <param name="output">Where; stays open.</param>
    /// <param name="result">What mending came to.</param>
    /// <param name="after">The mended show with what remains: accepted findings set apart, fixes for the others where they were asked for.</param>
    /// <param name="patch">The change of the document.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void WriteJson(Stream output, FixResult result, DocumentCheck after, JsonPatch patch)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(patch);
        FixJson.Write(output, result, after, patch);
    }

    private static void Head(StringBuilder text, string title, int count) => text.Append(count == 0 ? "" : $"\n{title}\n");

    private static void Add(StringBuilder text, Finding finding) =>
        text.Append(CultureInfo.InvariantCulture, $"  {finding.Rule} {PlainText.Word(finding.Severity)}: {finding.Message}\n");

    private static void Add(StringBuilder text, int number, AppliedFix applied)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n{number}. {applied.Fix.Title} ({applied.Finding.Rule}, {PlainText.Word(applied.Fix.Safety)})\n");
        text.Append(CultureInfo.InvariantCulture, $"   for: {applied.Finding.Message}\n");
        foreach (var edit in applied.Fix.Edits)
        {
            text.Append(CultureInfo.InvariantCulture, $"   {ShowText.Describe(edit)}\n");
        }

        foreach (var move in applied.Moves)
        {
            text.Append(CultureInfo.InvariantCulture, $"   {move.At} now carries {Name(move.After)} instead of {Name(move.Before)}\n");
        }

        if (applied.Fix.Caution is { } caution)
        {
            text.Append(CultureInfo.InvariantCulture, $"   mind: {caution}\n");
        }
    }

    private static string Name(Point? source) => source?.ToString() ?? "nothing";
}
