using System.Globalization;
using System.Text;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Output;

/// <summary>Tells in words what mending a show came to.</summary>
internal static class FixAccount
{
    /// <param name="name">What the document is called.</param>
    /// <param name="result">What mending came to.</param>
    /// <param name="choices">What a person can do about each finding that is left, in the order of the findings.</param>
    /// <param name="isDry">True when nothing was written.</param>
    public static string Text(string name, FixResult result, IReadOnlyList<ValueList<Fix>> choices, bool isDry)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{name}: {Heading(result, isDry)}\n");
        for (var i = 0; i < result.Applied.Count; i++)
        {
            Add(text, i + 1, result.Applied[i]);
        }

        if (!result.Refused.IsEmpty)
        {
            text.Append("\nnot taken\n");
        }

        foreach (var refused in result.Refused)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {refused.Finding.Rule} {refused.Title}\n    because {refused.Reason}\n");
        }

        if (!result.After.Findings.IsEmpty)
        {
            text.Append("\nleft\n");
        }

        for (var i = 0; i < result.After.Findings.Count; i++)
        {
            var finding = result.After.Findings[i];
            text.Append(CultureInfo.InvariantCulture, $"  {finding.Rule} {Word(finding.Severity)}: {finding.Message}\n");
            foreach (var fix in choices[i])
            {
                text.Append(CultureInfo.InvariantCulture, $"    {Word(fix.Safety)}: {fix.Title}\n");
                foreach (var choice in fix.Choices)
                {
                    text.Append(CultureInfo.InvariantCulture, $"      - {choice}\n");
                }
            }
        }

        return SafeText.Show(text.ToString());
    }

    /// <summary>One line that says how it went.</summary>
    public static string Heading(FixResult result, bool isDry)
    {
        var fixes = result.Applied.Count == 1 ? "1 fix" : string.Create(CultureInfo.InvariantCulture, $"{result.Applied.Count} fixes");
        var left = result.After.Findings.Count == 1 ? "1 finding" : string.Create(CultureInfo.InvariantCulture, $"{result.After.Findings.Count} findings");
        var end = !result.Circle.IsEmpty ? $"; stopped, because fixes of {string.Join(", ", result.Circle)} undo one another"
            : result.IsStopped ? "; stopped after too many trials"
            : "";
        return string.Create(CultureInfo.InvariantCulture, $"{fixes} {(isDry ? "would be taken" : "taken")}, {result.Refused.Count} not, {left} left{end}");
    }

    public static string Word(FixSafety safety) => safety switch
    {
        FixSafety.Safe => "safe",
        FixSafety.Unsafe => "unsafe",
        _ => "manual",
    };

    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    private static void Add(StringBuilder text, int number, AppliedFix applied)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n{number}. {applied.Fix.Title} ({applied.Finding.Rule}, {Word(applied.Fix.Safety)})\n");
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
