using RoutingRules.Fixing;

namespace RoutingRules.Diagnosis;

/// <summary>Changes of one list of a show: elements that others take the place of, and elements at its end.</summary>
internal sealed class ListChange<T>
    where T : class
{
    public SortedDictionary<int, IReadOnlyList<T>> Replaced { get; } = [];

    public List<T> Added { get; } = [];

    public bool IsEmpty => Replaced.Count == 0 && Added.Count == 0;

    /// <summary>Adds the edits, from the end of the list to its start.</summary>
    public void AddEdits(List<ShowEdit> edits, ShowList<T> list, IReadOnlyList<T> elements)
    {
        for (var i = 0; i < Added.Count; i++)
        {
            edits.Add(ShowEdit.Insert(list, elements.Count + i, Added[i]));
        }

        foreach (var (index, after) in Replaced.Reverse())
        {
            ListEdits.Exchange(edits, list, index, elements[index], after);
        }
    }

    /// <summary>Writes the same change for another state of the list; false when an element is not there.</summary>
    public bool AddTo(ListChange<T> change, IReadOnlyList<T> before, IReadOnlyList<T> other)
    {
        change.Added.AddRange(Added);
        foreach (var (index, after) in Replaced)
        {
            var at = index < other.Count && other[index].Equals(before[index]) ? index : -1;
            for (var i = 0; at < 0 && i < other.Count; i++)
            {
                at = other[i].Equals(before[index]) && !change.Replaced.ContainsKey(i) ? i : -1;
            }

            if (at < 0 || !change.Replaced.TryAdd(at, after))
            {
                return false;
            }
        }

        return true;
    }
}
