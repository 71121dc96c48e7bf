using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes why demands are where they are, for people.</summary>
/// <remarks>Lines end with LF; the same answer gives the same text. Characters that could steer a terminal are written out.</remarks>
public static class WhyReport
{
    /// <summary>Writes the answer as plain text: the place asked about first, then each demand with what speaks for and against, then the devices.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="points">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(WhyAnswer answer, Show show, TextWriter output, PanelNames? points = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(output);
        points ??= PanelNames.Ids;
        var names = new DemandNames(show);
        var words = new WhyWords(names, show);
        if (answer.WhatIf is { } what)
        {
            foreach (var sentence in words.Suppose(what))
            {
                output.Write($"{points.In(sentence)}\n");
            }

            output.Write("\n");
        }

        var isFirst = true;
        foreach (var decision in answer.Decisions)
        {
            output.Write($"{(isFirst ? "" : "\n")}{points.In(words.Headline(decision))}\n");
            isFirst = false;
            foreach (var sentence in Sentences(decision, words))
            {
                output.Write($"  {points.In(sentence)}\n");
            }

            foreach (var unplaced in decision.Unplaced)
            {
                output.Write($"  {points.In(Missing(unplaced))}\n");
                AssignmentTextReport.WriteConflict(unplaced, new ConflictText(names, show), output, "  ");
            }

            if (!decision.Refusals.IsEmpty)
            {
                output.Write(decision.At is null ? "  The places it might have\n" : "  Why not elsewhere\n");
                var table = new TextColumns();
                foreach (var refusal in decision.Refusals)
                {
                    table.Add(points.In(WhyWords.Places(refusal)), points.In(words.Against(decision, refusal)));
                }

                table.WriteTo(output, "    ");
            }
        }

        output.Write(Standing(answer));
        UtilisationText.Write(show, Concerned(answer), output);
    }

    /// <summary>Writes the same as Markdown.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="points">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void WriteMarkdown(WhyAnswer answer, Show show, TextWriter output, PanelNames? points = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(output);
        points ??= PanelNames.Ids;
        var names = new DemandNames(show);
        var words = new WhyWords(names, show);
        var conflicts = new ConflictText(names, show);
        output.Write($"# {MarkdownText.Escape($"Why {answer.Subject}")}\n");
        foreach (var sentence in answer.WhatIf is { } what ? words.Suppose(what) : [])
        {
            output.Write($"\n{MarkdownText.Escape(points.In(sentence))}\n");
        }

        foreach (var decision in answer.Decisions)
        {
            output.Write($"\n**{MarkdownText.Escape(points.In(words.Headline(decision)))}**\n\n");
            foreach (var sentence in Sentences(decision, words).Concat(decision.Unplaced.SelectMany(unplaced => Missing(unplaced, conflicts))))
            {
                output.Write($"- {MarkdownText.Escape(points.In(sentence))}\n");
            }

            if (!decision.Refusals.IsEmpty)
            {
                WriteTable(
                    output,
                    ["place", "why not"],
                    decision.Refusals.Select(refusal => new[] { points.In(WhyWords.Places(refusal)), points.In(words.Against(decision, refusal)) })
                );
            }
        }

        WriteTable(output, UtilisationText.Heads, UtilisationText.Rows(show, Concerned(answer)));
    }

    /// <summary>The devices with places that are spoken of.</summary>
    private static List<DeviceUse> Concerned(WhyAnswer answer)
    {
        var devices = answer.Decisions.SelectMany(decision => decision.Refusals).SelectMany(refusal => refusal.Points).Select(run => run.Device).ToHashSet();
        devices.UnionWith(answer.Decisions.Where(decision => decision.At is not null).Select(decision => decision.At!.Value.Device));
        if (answer.WhatIf is { } what)
        {
            devices.Add(what.Point.Device);
        }

        return [.. answer.Utilisation.Where(use => devices.Contains(use.Device))];
    }

    private static IEnumerable<string> Sentences(WhyDecision decision, WhyWords words)
    {
        foreach (var ground in decision.Grounds.Select(PlainText.Show))
        {
            yield return ground;
        }

        if (decision.RunnerUp is not null)
        {
            yield return words.Second(decision);
        }
    }

    private static string Missing(UnplacedDemand unplaced) =>
        $"{(unplaced.Sink is { } sink ? $"It does not reach {sink}: " : "")}{PlainText.Show(unplaced.Reason)}";

    private static IEnumerable<string> Missing(UnplacedDemand unplaced, ConflictText text)
    {
        yield return Missing(unplaced);
        if (text.Conflict(unplaced) is { } conflict)
        {
            yield return conflict;
        }

        foreach (var change in unplaced.Relaxations.Select(text.Change))
        {
            yield return $"Would fit if {change}.";
        }
    }

    private static string Standing(WhyAnswer answer) =>
        answer.Status switch
        {
            AssignmentStatus.PinsContradict => "\nFixed places of the document contradict each other; this is about the best patch for the rest.\n",
            AssignmentStatus.Feasible or AssignmentStatus.Stopped =>
                "\nThe search ended before it had tried everything: what is said to be worse was compared with what it found.\n",
            _ => "",
        };

    private static void WriteTable(TextWriter output, string[] heads, IEnumerable<string[]> rows)
    {
        output.Write($"\n| {string.Join(" | ", heads)} |\n|{string.Concat(heads.Select(_ => " --- |"))}\n");
        foreach (var row in rows)
        {
            output.Write($"| {string.Join(" | ", row.Select(MarkdownText.Escape))} |\n");
        }
    }
}
