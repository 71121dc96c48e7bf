using System.Globalization;
using System.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Cli.Output;

/// <summary>Tells in words what reading a list into a show came to.</summary>
internal static class ImportAccount
{
    /// <summary>The heading and what came of each row.</summary>
    /// <param name="from">What the list is called.</param>
    /// <param name="list">What it is a list of.</param>
    /// <param name="result">What reading it came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    public static string Text(string from, IntentList list, ListImportResult result, bool isDry)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Heading(list, result, isDry)}\n");
        Add(text, "new", result.Added);
        Add(text, "changed", result.Changed.Select(change => $"{change.Id}: {string.Join(", ", change.Members)}").ToValueList());
        Add(text, "not in the list and kept", result.Kept);
        Add(text, "not in the list and taken out", result.Removed);
        Add(text, "mind", result.Notes.Select(note => $"{from}: {note}").ToValueList());
        return text.ToString();
    }

    /// <summary>One line that says how it went.</summary>
    public static string Heading(IntentList list, ListImportResult result, bool isDry) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"of {result.Added.Count + result.Changed.Count + result.Same.Count} {(list == IntentList.Feeds ? "feeds" : "lines")} in the list "
                + $"{result.Added.Count} {(isDry ? "would be " : "")}new, {result.Changed.Count} changed, {result.Same.Count} the same; "
                + $"{result.Kept.Count + result.Removed.Count} not in the list "
                + $"{(result.Removed.IsEmpty ? "and kept" : isDry ? "and to be taken out" : "and taken out")}"
        );

    private static void Add(StringBuilder text, string title, ValueList<string> entries)
    {
        if (!entries.IsEmpty)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{title}\n");
        }

        foreach (var entry in entries)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {entry}\n");
        }
    }
}
