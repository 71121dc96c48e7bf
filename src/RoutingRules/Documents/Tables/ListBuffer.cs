using System.Buffers;
using System.Runtime.CompilerServices;

namespace RoutingRules.Documents.Tables;

/// <summary>Gathers the elements of a list: the first few on the stack, more in rented memory.</summary>
internal ref struct ListBuffer<T>
{
    private Few few;
    private T[]? rented;
    private int count;

    public void Add(T item)
    {
        if (rented is null && count < Few.Length)
        {
            few[count++] = item;
            return;
        }

        if (rented is null || count == rented.Length)
        {
            Grow();
        }

        rented![count++] = item;
    }

    /// <summary>The elements in their own array; the rented memory goes back, so that the buffer cannot be used again.</summary>
    public T[] ToArray()
    {
        if (count == 0)
        {
            return [];
        }

        ReadOnlySpan<T> items = rented is null ? ((ReadOnlySpan<T>)few)[..count] : rented.AsSpan(0, count);
        var array = items.ToArray();
        if (rented is not null)
        {
            Return(rented);
        }

        return array;
    }

    private void Grow()
    {
        var larger = ArrayPool<T>.Shared.Rent(4 * count);
        if (rented is null)
        {
            ((ReadOnlySpan<T>)few)[..count].CopyTo(larger);
        }
        else
        {
            rented.AsSpan(0, count).CopyTo(larger);
            Return(rented);
        }

        rented = larger;
    }

    private static void Return(T[] array) => ArrayPool<T>.Shared.Return(array, RuntimeHelpers.IsReferenceOrContainsReferences<T>());

    [InlineArray(Length)]
    private struct Few
    {
        public const int Length = 8;
        private T first;
    }
}
