using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>How good an assignment is: 14 numbers, each 0 or more, smaller is better, earlier numbers first.</summary>
/// <remarks>
/// Unplaced demands by priority (critical, high, normal, low), moved demands (held, others), then one number for each
/// <see cref="ObjectiveLevel"/> in the usual order, whatever order was asked for.
/// </remarks>
public sealed record ObjectiveVector
{
    /// <summary>How many numbers a vector has.</summary>
    public const int Length = 14;

    private readonly ValueList<int> values;

    /// <summary>The numbers.</summary>
    /// <exception cref="ArgumentException">There are not 14 numbers, or one is negative.</exception>
    public required ValueList<int> Values
    {
        get => values;
        init
        {
            if (value.Count != Length || value.Any(number => number < 0))
            {
                throw new ArgumentException($"A vector has {Length} numbers of 0 or more.", nameof(value));
            }

            values = value;
        }
    }

    /// <summary>One level.</summary>
    public int this[ObjectiveLevel level] => values[6 + (int)level];

    /// <summary>Compares two vectors; negative when this one is better.</summary>
    /// <param name="other">The other vector.</param>
    /// <param name="order">The order of the levels after the first six numbers; empty for the usual one.</param>
    public int CompareTo(ObjectiveVector other, ValueList<ObjectiveLevel> order = default)
    {
        ArgumentNullException.ThrowIfNull(other);
        for (var i = 0; i < Length; i++)
        {
            var at = i < 6 || order.IsEmpty ? i : 6 + (int)order[i - 6];
            if (values[at] != other.values[at])
            {
                return values[at].CompareTo(other.values[at]);
            }
        }

        return 0;
    }

    /// <summary>The numbers in groups, such as <c>0 0 0 0 | 0 0 | 1 0 2 0 0 4 6 31</c>.</summary>
    public override string ToString() =>
        $"{string.Join(' ', values.Take(4))} | {string.Join(' ', values.Skip(4).Take(2))} | {string.Join(' ', values.Skip(6))}";
}
