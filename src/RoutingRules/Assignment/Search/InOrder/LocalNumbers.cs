namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Numbers things in the order in which they are first asked for, from 0.</summary>
internal sealed class LocalNumbers
{
    private readonly List<int> items = [];

    public int Count => items.Count;

    /// <summary>The thing with a number.</summary>
    public int this[int number] => items[number];

    public int Of(int item)
    {
        var at = items.IndexOf(item);
        if (at < 0)
        {
            at = items.Count;
            items.Add(item);
        }

        return at;
    }
}
