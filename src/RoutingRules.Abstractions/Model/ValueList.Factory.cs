namespace RoutingRules.Model;

/// <summary>Makes value lists.</summary>
public static class ValueList
{
    /// <summary>A list of the given elements, copied.</summary>
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => items.IsEmpty ? default : new ValueList<T>(items.ToArray());

    /// <summary>A list of the given elements, copied.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="items"/> is null.</exception>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        var array = items.ToArray();
        return array.Length == 0 ? default : new ValueList<T>(array);
    }

    /// <summary>Takes the array without a copy: the caller must not change it afterwards.</summary>
    internal static ValueList<T> Adopt<T>(T[] items) => items.Length == 0 ? default : new ValueList<T>(items);
}
