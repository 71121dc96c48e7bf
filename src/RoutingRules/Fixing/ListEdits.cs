namespace RoutingRules.Fixing;

/// <summary>Collects edits of a list from its end to its start, so that no edit moves the place of a later one.</summary>
internal static class ListEdits
{
    /// <summary>Puts any number of elements in the place of one.</summary>
    public static void Exchange<T>(List<ShowEdit> edits, ShowList<T> list, int index, T before, IReadOnlyList<T> after)
        where T : class
    {
        if (after.Count == 0)
        {
            edits.Add(ShowEdit.Remove(list, index, before));
            return;
        }

        if (!after[0].Equals(before))
        {
            edits.Add(ShowEdit.Replace(list, index, before, after[0]));
        }

        for (var i = 1; i < after.Count; i++)
        {
            edits.Add(ShowEdit.Insert(list, index + i, after[i]));
        }
    }
}
