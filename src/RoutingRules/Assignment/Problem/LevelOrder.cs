namespace RoutingRules.Assignment.Problem;

/// <summary>The order of the levels after the first two.</summary>
internal static class LevelOrder
{
    private static readonly ObjectiveLevel[] Usual = Enum.GetValues<ObjectiveLevel>();

    /// <summary>Which number of a vector stands at a place of the order asked for; an empty order is the usual one.</summary>
    public static int At(ReadOnlySpan<ObjectiveLevel> order, int place) =>
        place < ObjectiveNumbers.Levels || order.IsEmpty ? place : ObjectiveNumbers.Levels + (int)order[place - ObjectiveNumbers.Levels];

    /// <summary>The order asked for, or the usual one.</summary>
    /// <exception cref="ArgumentException">The order is no permutation of the levels.</exception>
    public static ObjectiveLevel[] Of(AssignmentOptions options)
    {
        if (options.Order.IsEmpty)
        {
            return Usual;
        }

        var order = options.Order.AsSpan().ToArray();
        return order.Length == Usual.Length && order.Distinct().Count() == Usual.Length
            ? order
            : throw new ArgumentException($"The order of levels must name each of the {Usual.Length} levels once.");
    }
}
