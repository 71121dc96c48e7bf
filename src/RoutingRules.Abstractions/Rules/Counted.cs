using System.Collections;

namespace RoutingRules.Rules;

/// <summary>A list of the model as a rule sees it: each element it takes counts as one unit of work.</summary>
/// <typeparam name="T">The element type.</typeparam>
public readonly struct Counted<T> : IReadOnlyList<T>
{
    private readonly IReadOnlyList<T> items;
    private readonly WorkMeter meter;

    internal Counted(IReadOnlyList<T> items, WorkMeter meter)
    {
        this.items = items;
        this.meter = meter;
    }

    /// <summary>How many elements.</summary>
    public int Count => items.Count;

    /// <summary>The element at a position counted from 0.</summary>
    public T this[int index]
    {
        get
        {
            meter.Add(1);
            return items[index];
        }
    }

    /// <summary>Enumerates, counting.</summary>
    public Enumerator GetEnumerator() => new(items, meter);

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Goes through the elements, counting.</summary>
    public struct Enumerator : IEnumerator<T>
    {
        private readonly IReadOnlyList<T> items;
        private readonly WorkMeter meter;
        private int index;

        internal Enumerator(IReadOnlyList<T> items, WorkMeter meter)
        {
            this.items = items;
            this.meter = meter;
            index = -1;
        }

        /// <inheritdoc/>
        public readonly T Current => items[index];

        readonly object? IEnumerator.Current => Current;

        /// <inheritdoc/>
        public bool MoveNext()
        {
            if (++index >= items.Count)
            {
                return false;
            }

            meter.Add(1);
            return true;
        }

        /// <inheritdoc/>
        public void Reset() => index = -1;

        /// <inheritdoc/>
        public readonly void Dispose() { }
    }
}
