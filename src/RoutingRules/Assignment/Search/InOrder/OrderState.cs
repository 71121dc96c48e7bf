namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Demands placed so far in list order, reduced to what later ones can notice.</summary>
/// <param name="Cells">Last point taken by group, block in use by group, outputs taken by group, sources by pool, then what is remembered.</param>
/// <param name="Cost">The vector so far, in the order asked for.</param>
/// <param name="Before">The state one demand earlier; null at the start.</param>
/// <param name="Option">The option of the last demand; null when it stood already or was left out.</param>
internal sealed record OrderState(int[] Cells, int[] Cost, OrderState? Before, OrderOption? Option)
{
    /// <summary>Compares two vectors in the order asked for.</summary>
    public static int Compare(int[] x, int[] y) => x.AsSpan().SequenceCompareTo(y);
}
