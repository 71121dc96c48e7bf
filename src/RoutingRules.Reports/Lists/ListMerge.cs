using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Puts the rows of a list into the list of a show.</summary>
internal sealed class ListMerge(Show show, IntentList list, ListProblems problems)
{
    private readonly IReadOnlyList<object> elements = ListElements.Of(show, list);
    private readonly List<MergedRow> merged = [];
    private readonly ListProblems notes = new(int.MaxValue);

    /// <summary>Reads each row whose feed or line is known.</summary>
    public void Add(List<ListRow> rows)
    {
        var reader = new RowReader(list, problems, notes);
        foreach (var row in rows.Where(row => row.Id is not null))
        {
            var before = row.Index < 0 ? null : elements[row.Index];
            if (reader.Read(row, before) is { } after)
            {
                merged.Add(new MergedRow(row, before, after));
            }
        }
    }

    /// <summary>What came of it; only where there is no problem.</summary>
    /// <param name="removesAbsent">Whether what the list does not have is taken out.</param>
    public ListImportResult Result(bool removesAbsent)
    {
        var named = merged.Select(entry => entry.Row.Index).ToHashSet();
        var absent = Enumerable.Range(0, elements.Count).Where(index => !named.Contains(index)).ToList();
        var edits = new List<ShowEdit>();
        foreach (var entry in merged.Where(entry => entry.Before is not null && !entry.Before.Equals(entry.After)))
        {
            edits.Add(Edit(entry.Row.Index, entry.Before, entry.After));
        }

        if (removesAbsent)
        {
            edits.AddRange(absent.AsEnumerable().Reverse().Select(index => Edit(index, elements[index], null)));
        }

        Insert(edits, removesAbsent ? named : [.. Enumerable.Range(0, elements.Count)]);
        var edited = edits.Aggregate(show, (now, edit) => edit.Apply(now) ?? throw new InvalidOperationException($"The edit at {edit.Pointer} does not fit."));
        new ListNames(edited, list, notes).Check(merged);
        var absentIds = absent.Select(index => ListElements.IdOf(elements[index])).ToValueList();
        return new ListImportResult
        {
            Show = edited,
            Edits = edits.ToValueList(),
            Notes = notes.ToList(),
            Added = merged.Where(entry => entry.Before is null).Select(entry => entry.Row.Id!).ToValueList(),
            Changed = merged
                .Where(entry => entry.Before is not null && !entry.Members.IsEmpty)
                .Select(entry => new ListChange { Id = entry.Row.Id!, Members = entry.Members })
                .ToValueList(),
            Same = merged.Where(entry => entry.Before is not null && entry.Members.IsEmpty).Select(entry => entry.Row.Id!).ToValueList(),
            Kept = removesAbsent ? [] : absentIds,
            Removed = removesAbsent ? absentIds : [],
        };
    }

    /// <summary>A new one stands behind that of the row before it; those before all others stand before the first that both have, or at the end.</summary>
    private void Insert(List<ShowEdit> edits, HashSet<int> staying)
    {
        var leading = merged.TakeWhile(entry => entry.Before is null).ToList();
        var behind = new Dictionary<int, List<MergedRow>>();
        var anchor = -1;
        foreach (var entry in merged.Skip(leading.Count))
        {
            if (entry.Before is not null)
            {
                anchor = entry.Row.Index;
                behind.Add(anchor, []);
            }
            else
            {
                behind[anchor].Add(entry);
            }
        }

        var first = leading.Count < merged.Count ? merged[leading.Count].Row.Index : -1;
        var place = 0;
        foreach (var index in Enumerable.Range(0, elements.Count).Where(staying.Contains))
        {
            if (index == first)
            {
                AddAll(leading);
            }

            place++;
            AddAll(behind.GetValueOrDefault(index) ?? []);
        }

        if (first < 0)
        {
            AddAll(leading);
        }

        void AddAll(List<MergedRow> entries) => edits.AddRange(entries.Select(entry => Edit(place++, null, entry.After)));
    }

    private ShowEdit Edit(int index, object? before, object? after) =>
        list == IntentList.Feeds ? Edit(ShowLists.Feeds, index, (Feed?)before, (Feed?)after) : Edit(ShowLists.Lines, index, (Line?)before, (Line?)after);

    private static ShowEdit Edit<T>(ShowList<T> list, int index, T? before, T? after)
        where T : class =>
        before is null ? ShowEdit.Insert(list, index, after!)
        : after is null ? ShowEdit.Remove(list, index, before)
        : ShowEdit.Replace(list, index, before, after);
}
