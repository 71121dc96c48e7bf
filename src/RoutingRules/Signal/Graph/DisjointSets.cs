namespace RoutingRules.Signal.Graph;

/// <summary>Sets of numbers that can only grow together (union by size, path halving).</summary>
internal sealed class DisjointSets
{
    private readonly int[] parent;
    private readonly int[] size;

    public DisjointSets(int count)
    {
        parent = new int[count];
        size = new int[count];
        for (var i = 0; i < count; i++)
        {
            parent[i] = i;
            size[i] = 1;
        }
    }

    /// <summary>Makes a number a set of its own again; all numbers that were joined with it have to go back with it.</summary>
    public void Reset(int item)
    {
        parent[item] = item;
        size[item] = 1;
    }

    /// <summary>The number that stands for the set of a number.</summary>
    public int Find(int item)
    {
        while (parent[item] != item)
        {
            item = parent[item] = parent[parent[item]];
        }

        return item;
    }

    /// <summary>How many numbers the set of a number holds.</summary>
    public int SizeOf(int item) => size[Find(item)];

    /// <summary>Makes two sets one; false when they are one already.</summary>
    public bool Join(int one, int other)
    {
        (one, other) = (Find(one), Find(other));
        if (one == other)
        {
            return false;
        }

        var (small, large) = size[one] < size[other] ? (one, other) : (other, one);
        parent[small] = large;
        size[large] += size[small];
        return true;
    }
}
