using RoutingRules.Assignment.Problem;
using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>The first number in which two assignments differ.</summary>
public sealed record ObjectiveDifference
{
    /// <summary>The position in <see cref="ObjectiveVector.Values"/>, from 0.</summary>
    public required int Number { get; init; }

    /// <summary>By how much the second is larger, so worse; negative when it is better.</summary>
    public required int By { get; init; }

    /// <summary>Compares two vectors; null when they are equal.</summary>
    internal static ObjectiveDifference? Between(ObjectiveVector first, ObjectiveVector second, ValueList<ObjectiveLevel> order)
    {
        for (var i = 0; i < ObjectiveVector.Length; i++)
        {
            var at = LevelOrder.At(order.AsSpan(), i);
            if (first.Values[at] != second.Values[at])
            {
                return new ObjectiveDifference { Number = at, By = second.Values[at] - first.Values[at] };
            }
        }

        return null;
    }
}
