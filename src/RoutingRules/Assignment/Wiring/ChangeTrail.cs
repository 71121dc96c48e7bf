namespace RoutingRules.Assignment.Wiring;

/// <summary>Changes numbers in arrays so that every change can be taken back.</summary>
internal sealed class ChangeTrail
{
    private readonly Stack<Change> changes = new();

    private readonly record struct Change(int[]? Cells, long[]? Wide, int Index, long Old);

    public int Mark => changes.Count;

    public void Set(int[] cells, int index, int to)
    {
        changes.Push(new Change(cells, null, index, cells[index]));
        cells[index] = to;
    }

    public void Set(long[] cells, int index, long to)
    {
        changes.Push(new Change(null, cells, index, cells[index]));
        cells[index] = to;
    }

    /// <summary>Takes back every change since a mark.</summary>
    public void Undo(int mark)
    {
        while (changes.Count > mark)
        {
            var (cells, wide, index, old) = changes.Pop();
            if (cells is not null)
            {
                cells[index] = (int)old;
            }
            else
            {
                wide![index] = old;
            }
        }
    }
}
