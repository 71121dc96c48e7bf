using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Keeps what other tools wrote inside members that a cell changes.</summary>
internal static class ListExtensions
{
    /// <summary>Hands <c>extensions</c> of old destinations and separations on to the new ones.</summary>
    public static Feed? Carry(Feed? before, Feed? after, ListRow row, ListProblems notes) =>
        before is null || after is null
            ? after
            : after with
            {
                To = Carry(
                    before.To,
                    after.To,
                    static place => place.Extensions,
                    static (place, kept) => place with { Extensions = kept },
                    row.Find("to"),
                    notes
                ),
                SeparateFrom = Carry(
                    before.SeparateFrom,
                    after.SeparateFrom,
                    static entry => entry.Extensions,
                    static (entry, kept) => entry with { Extensions = kept },
                    row.Find("separateFrom"),
                    notes
                ),
            };

    /// <summary>Hands <c>extensions</c> of an old origin on to the new one.</summary>
    public static Line? Carry(Line? before, Line? after) =>
        before is null || after is null ? after : after with { From = after.From with { Extensions = before.From.Extensions } };

    /// <summary>An entry takes what one that said the same had, else what the one at its place had.</summary>
    private static ValueList<T> Carry<T>(
        ValueList<T> before,
        ValueList<T> after,
        Func<T, ExtensionData?> get,
        Func<T, ExtensionData?, T> set,
        ListCell? cell,
        ListProblems notes
    )
        where T : class
    {
        if (after == before || before.All(entry => get(entry) is null))
        {
            return after;
        }

        var carried = after.Select(entry => set(entry, null)).ToArray();
        var free = Enumerable.Repeat(true, carried.Length).ToArray();
        var rest = new List<int>();
        for (var i = 0; i < before.Count; i++)
        {
            var said = set(before[i], null);
            var same = Enumerable.Range(0, carried.Length).FirstOrDefault(index => free[index] && carried[index].Equals(said), -1);
            if (same >= 0)
            {
                carried[same] = before[i];
                free[same] = false;
            }
            else if (get(before[i]) is not null)
            {
                rest.Add(i);
            }
        }

        foreach (var i in rest)
        {
            if (i < free.Length && free[i])
            {
                free[i] = false;
                carried[i] = set(carried[i], get(before[i]));
            }
            else
            {
                notes.Add(cell?.Line, cell?.Header, "what other tools kept in an entry goes with it", "Look after them.");
            }
        }

        return carried.ToValueList();
    }
}
