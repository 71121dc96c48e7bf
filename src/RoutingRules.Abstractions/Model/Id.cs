namespace RoutingRules.Model;

/// <summary>The identifier of one kind of entity: <c>Id&lt;Device&gt;</c> cannot be given where an <c>Id&lt;Feed&gt;</c> is meant.</summary>
/// <remarks>
/// Equality and order are ordinal. In documents an id is 1 to 64 letters, digits, dots, hyphens or underscores and starts with a letter or digit
/// (a profile id may hold several such parts joined by <c>/</c>). <c>default</c> is no id: <see cref="IsNone"/> is true and it never equals a read id.
/// </remarks>
/// <typeparam name="T">The entity the id names.</typeparam>
public readonly struct Id<T> : IEquatable<Id<T>>, IComparable<Id<T>>
{
    private readonly string? value;

    /// <summary>Wraps a text; the text is not checked here, documents are checked by their reader.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public Id(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        this.value = value;
    }

    /// <summary>True for <c>default</c>: no id.</summary>
    public bool IsNone => value is null;

    /// <summary>The text of the id; empty when <see cref="IsNone"/>.</summary>
    public string Value => value ?? "";

    /// <inheritdoc/>
    public bool Equals(Id<T> other) => string.Equals(value, other.value, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Id<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => value is null ? 0 : string.GetHashCode(value, StringComparison.Ordinal);

    /// <summary>Ordinal order.</summary>
    public int CompareTo(Id<T> other) => string.CompareOrdinal(value, other.value);

    /// <summary>The text of the id.</summary>
    public override string ToString() => Value;

    /// <summary>Ordinal equality.</summary>
    public static bool operator ==(Id<T> left, Id<T> right) => left.Equals(right);

    /// <summary>Ordinal inequality.</summary>
    public static bool operator !=(Id<T> left, Id<T> right) => !left.Equals(right);

    /// <summary>Ordinal order.</summary>
    public static bool operator <(Id<T> left, Id<T> right) => left.CompareTo(right) < 0;

    /// <summary>Ordinal order.</summary>
    public static bool operator >(Id<T> left, Id<T> right) => left.CompareTo(right) > 0;

    /// <summary>Ordinal order.</summary>
    public static bool operator <=(Id<T> left, Id<T> right) => left.CompareTo(right) <= 0;

    /// <summary>Ordinal order.</summary>
    public static bool operator >=(Id<T> left, Id<T> right) => left.CompareTo(right) >= 0;
}
