namespace RoutingRules.Rules;

/// <summary>The one total order of findings: rule id, pointer, entities, message; ordinal, with numbers in pointers compared as numbers.</summary>
public sealed class FindingOrder : IComparer<Finding>
{
    private FindingOrder() { }

    /// <summary>The order.</summary>
    public static FindingOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(Finding? x, Finding? y)
    {
        if (x is null || y is null)
        {
            return (x is null ? 0 : 1) - (y is null ? 0 : 1);
        }

        var order = string.CompareOrdinal(x.Rule, y.Rule);
        order = order != 0 ? order : ComparePointers(x.Pointer, y.Pointer);
        for (var i = 0; order == 0 && i < x.Entities.Count && i < y.Entities.Count; i++)
        {
            order = string.CompareOrdinal(x.Entities[i].Role, y.Entities[i].Role);
            order = order != 0 ? order : string.CompareOrdinal(x.Entities[i].Id, y.Entities[i].Id);
        }

        order = order != 0 ? order : x.Entities.Count - y.Entities.Count;
        return order != 0 ? order : string.CompareOrdinal(x.Message, y.Message);
    }

    private static int ComparePointers(ReadOnlySpan<char> x, ReadOnlySpan<char> y)
    {
        while (!x.IsEmpty && !y.IsEmpty)
        {
            var xPart = NextPart(ref x);
            var yPart = NextPart(ref y);
            var order =
                int.TryParse(xPart, out var xNumber) && int.TryParse(yPart, out var yNumber) ? xNumber.CompareTo(yNumber) : xPart.SequenceCompareTo(yPart);
            if (order != 0)
            {
                return order;
            }
        }

        return x.Length - y.Length;
    }

    private static ReadOnlySpan<char> NextPart(ref ReadOnlySpan<char> rest)
    {
        rest = rest[1..];
        var end = rest.IndexOf('/');
        var part = end < 0 ? rest : rest[..end];
        rest = end < 0 ? [] : rest[end..];
        return part;
    }
}
