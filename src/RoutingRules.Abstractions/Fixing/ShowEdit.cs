using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>One change of a list of a show, with what must stand there before.</summary>
public abstract record ShowEdit
{
    private protected ShowEdit() { }

    /// <summary>What it does.</summary>
    public abstract EditKind Kind { get; }

    /// <summary>The JSON Pointer of the list.</summary>
    public abstract string ListPointer { get; }

    /// <summary>The position in the list, from 0.</summary>
    public abstract int Index { get; }

    /// <summary>The JSON Pointer of the element.</summary>
    public string Pointer => FormattableString.Invariant($"{ListPointer}/{Index}");

    /// <summary>The element that must stand there; null for an insertion.</summary>
    internal abstract object? BeforeElement { get; }

    /// <summary>The element that stands there afterwards; null for a removal.</summary>
    internal abstract object? AfterElement { get; }

    /// <summary>Puts an element into a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="index">Its position afterwards, from 0 to the number of elements.</param>
    /// <param name="after">The element.</param>
    public static ShowEdit Insert<T>(ShowList<T> list, int index, T after)
        where T : class => new ListEdit<T>(list, EditKind.Insert, index, null, after);

    /// <summary>Takes an element out of a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="index">Its position, from 0.</param>
    /// <param name="before">The element as it must stand there.</param>
    public static ShowEdit Remove<T>(ShowList<T> list, int index, T before)
        where T : class => new ListEdit<T>(list, EditKind.Remove, index, before, null);

    /// <summary>Changes an element of a list.</summary>
    /// <param name="list">The list.</param>
    /// <param name="index">Its position, from 0.</param>
    /// <param name="before">The element as it must stand there.</param>
    /// <param name="after">The element that takes its place.</param>
    public static ShowEdit Replace<T>(ShowList<T> list, int index, T before, T after)
        where T : class => new ListEdit<T>(list, EditKind.Replace, index, before, after);

    /// <summary>The same edit of an element at another position of the list; null for an insertion, which has no element to be found by.</summary>
    internal abstract ShowEdit? At(int index);

    /// <summary>Applies the edit.</summary>
    /// <param name="show">The show; stays as it is.</param>
    /// <returns>The edited show, or null when something else stands there than the edit expects.</returns>
    public abstract Show? Apply(Show show);

    private sealed record ListEdit<T> : ShowEdit
        where T : class
    {
        private readonly ShowList<T> list;
        private readonly T? before;
        private readonly T? after;

        public ListEdit(ShowList<T> list, EditKind kind, int index, T? before, T? after)
        {
            ArgumentNullException.ThrowIfNull(list);
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            if ((before is null && kind != EditKind.Insert) || (after is null && kind != EditKind.Remove))
            {
                throw new ArgumentNullException(before is null && kind != EditKind.Insert ? nameof(before) : nameof(after));
            }

            this.list = list;
            this.before = before;
            this.after = after;
            Kind = kind;
            Index = index;
        }

        public override EditKind Kind { get; }

        public override int Index { get; }

        public override string ListPointer => list.Pointer;

        internal override ShowEdit? At(int index) => before is null ? null : new ListEdit<T>(list, Kind, index, before, after);

        internal override object? BeforeElement => before;

        internal override object? AfterElement => after;

        public override Show? Apply(Show show)
        {
            ArgumentNullException.ThrowIfNull(show);
            if (list.Get(show) is not { } elements)
            {
                return null;
            }

            var fits = before is null ? Index <= elements.Count : Index < elements.Count && elements[Index].Equals(before);
            if (!fits)
            {
                return null;
            }

            var edited = new List<T>(elements);
            if (before is not null)
            {
                edited.RemoveAt(Index);
            }

            if (after is not null)
            {
                edited.Insert(Index, after);
            }

            return list.Set(show, edited.ToValueList());
        }
    }
}
