using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Reports.Riders;

/// <summary>Tells what of a band's list stands in a show now, and what to ask the band.</summary>
public static class RiderAccount
{
    /// <summary>One line that says how much.</summary>
    /// <param name="result">What reading came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static string Heading(RiderResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(result);
        var added = $"{PlainText.Count(result.Lines.Count, "line")} and {PlainText.Count(result.Feeds.Count, "mix", "mixes")}";
        var changed = result.Changed.IsEmpty ? "" : FormattableString.Invariant($", {result.Changed.Count} changed");
        var asked = result.Questions.IsEmpty ? "" : $"; {PlainText.Count(result.Questions.Count, "question")} for the band";
        return $"{added} {(isDry ? "would be added" : "added")}{changed}{asked}";
    }

    /// <summary>The account in words, for people; lines end with LF, and characters that could steer a terminal are written out.</summary>
    /// <param name="path">What to call the show.</param>
    /// <param name="list">What to call the list.</param>
    /// <param name="result">What reading came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(string path, string list, RiderResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(list);
        var text = new StringBuilder($"{PlainText.Show(path)}: {Heading(result, isDry)}\n");
        Add("New lines", result.Lines);
        Add("New mixes", result.Feeds);
        Add("Changed", result.Changed);
        if (!result.Questions.IsEmpty)
        {
            text.Append("  Questions for the band; these rows are left out\n").Append(Each($"    {list}", result.Questions));
        }

        if (!result.Notes.IsEmpty)
        {
            text.Append("  To mind\n").Append(Each($"    {list}", result.Notes));
        }

        return text.ToString();

        void Add(string what, ValueList<string> ids)
        {
            if (!ids.IsEmpty)
            {
                text.Append("  ").Append(what).Append(": ").Append(PlainText.Show(string.Join(", ", ids))).Append('\n');
            }
        }
    }

    /// <summary>Problems or questions, one a line, each with where it stands.</summary>
    /// <param name="list">What to call the list.</param>
    /// <param name="problems">The problems or questions.</param>
    /// <exception cref="ArgumentNullException"><paramref name="list"/> is null.</exception>
    public static string Each(string list, ValueList<ListProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(list);
        return string.Concat(problems.Select(problem => $"{PlainText.Show($"{list}: {problem}")}\n"));
    }
}
