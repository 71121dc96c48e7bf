using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A list of a show that edits can change; see <see cref="ShowLists"/>.</summary>
/// <typeparam name="T">The element type.</typeparam>
public sealed class ShowList<T> : IEquatable<ShowList<T>>
    where T : class
{
    private readonly Func<Show, ValueList<T>?> get;
    private readonly Func<Show, ValueList<T>, Show> set;

    internal ShowList(string pointer, Func<Show, ValueList<T>?> get, Func<Show, ValueList<T>, Show> set)
    {
        Pointer = pointer;
        this.get = get;
        this.set = set;
    }

    /// <summary>The JSON Pointer (RFC 6901) of the list.</summary>
    public string Pointer { get; }

    /// <summary>The list of a show; null when the show has nothing that the list belongs to.</summary>
    internal ValueList<T>? Get(Show show) => get(show);

    internal Show Set(Show show, ValueList<T> list) => set(show, list);

    /// <summary>True for the list of the same pointer.</summary>
    public bool Equals(ShowList<T>? other) => other is not null && string.Equals(Pointer, other.Pointer, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ShowList<T>);

    /// <inheritdoc/>
    public override int GetHashCode() => Pointer.GetHashCode(StringComparison.Ordinal);
}
