using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Planning.LineChecks;
using RoutingRules.Reports.Names;

namespace RoutingRules.Reports.Answers;

/// <summary>Tells what of a line check stands in a show now, and what has to be assigned again.</summary>
public static class LineCheckReport
{
    /// <summary>One line that says how much.</summary>
    /// <param name="record">What recording came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    public static string Heading(LineCheckRecord record, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(record);
        var found = record.Results.Count(result => result.IsNew);
        var same =
            record.Results.Count == found ? "" : string.Create(CultureInfo.InvariantCulture, $", {record.Results.Count - found} as the show says already");
        var again = record.ToAssign.IsEmpty
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"; {PlainText.Count(record.ToAssign.Count, "feed or line", "feeds and lines")} to assign again");
        return $"{PlainText.Count(found, "result")} {(isDry ? "would be recorded" : "recorded")}{same}{again}";
    }

    /// <summary>The account in words, for people; lines end with LF, and characters that could steer a terminal are written out.</summary>
    /// <param name="path">What to call the document.</param>
    /// <param name="record">What recording came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <param name="names">What devices and connectors are called.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(string path, LineCheckRecord record, bool isDry, PanelNames names)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(names);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{PlainText.Show(path)}: {Heading(record, isDry)}\n");
        foreach (var result in record.Results.Where(result => result.IsNew))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {PlainText.Show(names.In(Sentence(result)))}\n");
            if (!result.Cabled.IsEmpty)
            {
                text.Append(CultureInfo.InvariantCulture, $"    {PlainText.Show(names.In(Replug(result)))}\n");
            }
        }

        if (!record.AtDead.IsEmpty)
        {
            var who = string.Join(", ", record.AtDead);
            text.Append(
                record.AreFreed
                    ? $"  May stand elsewhere on the same device now: {PlainText.Show(who)}\n"
                    : $"  Still asked for at a connector that does not work: {PlainText.Show(who)}. With --free they may take another of the same device.\n"
            );
        }

        if (!record.ToAssign.IsEmpty)
        {
            text.Append(CultureInfo.InvariantCulture, $"  Assign again: {PlainText.Show(string.Join(", ", record.ToAssign))}\n");
        }

        return text.ToString();
    }

    private static string Sentence(RecordedResult recorded)
    {
        var (at, other) = (recorded.Result.At, recorded.Result.Other);
        var (here, there) = (Who(recorded.Stood), Who(recorded.StoodAtOther));
        var why = recorded.Result.Reason is { } reason ? $" ({reason})" : "";
        return recorded.Result.Word switch
        {
            LineCheckWord.Dead => $"{at} does not work{why}{(here is null ? "" : $"; {here} stood there")}",
            LineCheckWord.Reserved => $"{at} is kept{why}{(here is null ? "" : $"; {here} stands there")}",
            LineCheckWord.Works => $"{at} works again",
            LineCheckWord.Swapped => $"The plugs at {at} and {other} are the other way round: {here ?? "nothing"} is at {other}, {there ?? "nothing"} at {at}",
            _ => $"{here ?? "what was to be"} at {at} is plugged at {other}",
        };
    }

    private static string Replug(RecordedResult recorded)
    {
        var far = string.Join(" and ", recorded.Cabled);
        return recorded.Free is { } free
            ? $"The cable to {far} has to be plugged elsewhere: {free} is free. Then say --moved \"{recorded.Result.At}={free}\"."
            : $"The cable to {far} has to be plugged elsewhere, and no other of its kind is free on the device.";
    }

    private static string? Who(Model.ValueList<string> names) => names.IsEmpty ? null : string.Join(" and ", names.Select(name => $"'{name}'"));
}
