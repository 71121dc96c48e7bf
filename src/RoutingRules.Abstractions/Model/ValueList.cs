using System.Collections;
using System.Runtime.CompilerServices;

namespace RoutingRules.Model;

/// <summary>An immutable list that is equal to another list of equal elements in the same order; <c>default</c> is the empty list.</summary>
/// <remarks>Thread safe. Takes collection expressions: <c>ValueList&lt;int&gt; list = [1, 2];</c>.</remarks>
/// <typeparam name="T">The element type; its default equality is used.</typeparam>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public readonly struct ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly T[]? items;

    internal ValueList(T[] items) => this.items = items;

    /// <summary>The number of elements, 0 or more.</summary>
    public int Count => items?.Length ?? 0;

    /// <summary>True when there is no element.</summary>
    public bool IsEmpty => items is null || items.Length == 0;

    /// <summary>The element at a position counted from 0.</summary>
    /// <exception cref="IndexOutOfRangeException">The position is not in the list.</exception>
    public T this[int index] => (items ?? [])[index];

    /// <summary>True when both are one list and not only equal.</summary>
    internal bool IsSame(ValueList<T> other) => ReferenceEquals(items, other.items);

    /// <summary>The elements as a span.</summary>
    public ReadOnlySpan<T> AsSpan() => items;

    /// <summary>Enumerates without allocation.</summary>
    public ReadOnlySpan<T>.Enumerator GetEnumerator() => AsSpan().GetEnumerator();

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)(items ?? [])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => (items ?? []).GetEnumerator();

    /// <inheritdoc/>
    public bool Equals(ValueList<T> other) => AsSpan().SequenceEqual(other.AsSpan(), EqualityComparer<T>.Default);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ValueList<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in AsSpan())
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <summary>The elements between brackets, for logs and test output.</summary>
    public override string ToString() => $"[{string.Join(", ", items ?? [])}]";

    /// <summary>Element-wise equality.</summary>
    public static bool operator ==(ValueList<T> left, ValueList<T> right) => left.Equals(right);

    /// <summary>Element-wise inequality.</summary>
    public static bool operator !=(ValueList<T> left, ValueList<T> right) => !left.Equals(right);
}
