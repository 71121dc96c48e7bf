using RoutingRules.Model;
using RoutingRules.Reports.Lists;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Riders;

/// <summary>Reads the list of inputs and mixes that a band sends into a show: lines with their channels, mixes with their buses.</summary>
/// <remarks>
/// Titles, headings, empty rows, spare rows and totals are passed over. What a word means is told by a fixed table of usual words; what it does not
/// know becomes a question and is left out, never a guess. A line or mix of a name that the show has is brought in line with the list. Thread safe.
/// </remarks>
public static class Rider
{
    /// <summary>Reads a list. Never throws for what the list holds.</summary>
    /// <param name="show">The show with the rig of the house; stays as it is.</param>
    /// <param name="utf8">The list, CSV in UTF-8 with or without a byte order mark.</param>
    /// <param name="options">Where things go; null where the rig leaves no choice.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public static RiderResult Read(ResolvedShow show, ReadOnlySpan<byte> utf8, RiderOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        options ??= new RiderOptions();
        var (problems, questions, notes) = (
            new ListProblems(options.MaxProblems),
            new ListProblems(options.MaxProblems),
            new ListProblems(options.MaxProblems)
        );
        if (ListText.Decode(utf8, options.MaxBytes, problems) is { } text && RiderRig.Of(show, options, problems) is { } rig)
        {
            var tables = RiderTables.Read(CsvReader.Read(text, CsvReader.Guess(text), problems), questions);
            if (tables.Inputs.Count + tables.Mixes.Count == 0 && questions.IsEmpty)
            {
                problems.Add(
                    null,
                    null,
                    "the list has no table of inputs or mixes",
                    "Write a row of headers above it, such as Ch, Instrument, Mic/DI, 48V, Stand, Position, Remarks, or Mix, Musician, Type."
                );
            }

            var rows = new RiderRows(rig, options, questions, notes, problems);
            var lines = Merge(show.Document, IntentList.Lines, rows.Lines(tables.Inputs), problems);
            var feeds = Merge(lines?.Show ?? show.Document, IntentList.Feeds, rows.Feeds(tables.Mixes), problems);
            if (problems.IsEmpty)
            {
                return new RiderResult
                {
                    Show = feeds!.Show,
                    Edits = lines!.Edits.Concat(feeds.Edits).ToValueList(),
                    Lines = lines.Added,
                    Feeds = feeds.Added,
                    Changed = lines.Changed.Concat(feeds.Changed).Select(change => change.Id).ToValueList(),
                    Questions = questions.ToList(),
                    Notes = notes.ToList(),
                };
            }
        }

        return new RiderResult { Problems = problems.ToList(), Questions = questions.ToList() };
    }

    private static ListImportResult? Merge(Show show, IntentList list, List<ListRow> rows, ListProblems problems)
    {
        ListIdentity.Settle(show, list, rows, problems);
        var merge = new ListMerge(show, list, problems);
        merge.Add(rows);
        return problems.IsEmpty ? merge.Result(removesAbsent: false) : null;
    }
}
