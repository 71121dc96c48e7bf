namespace RoutingRules.Assignment.Wiring;

/// <summary>What a wiring costs on the three levels that depend on it.</summary>
internal readonly record struct WiringCost(int Rewritten, int Transmit, int Receive)
{
    public static WiringCost operator +(WiringCost left, WiringCost right) =>
        new(left.Rewritten + right.Rewritten, left.Transmit + right.Transmit, left.Receive + right.Receive);

    public static WiringCost operator -(WiringCost left, WiringCost right) =>
        new(left.Rewritten - right.Rewritten, left.Transmit - right.Transmit, left.Receive - right.Receive);

    /// <summary>Compares in the order of the three levels that was asked for.</summary>
    public int CompareTo(WiringCost other, ReadOnlySpan<ObjectiveLevel> order)
    {
        foreach (var level in order)
        {
            var compared = this[level].CompareTo(other[level]);
            if (compared != 0)
            {
                return compared;
            }
        }

        return 0;
    }

    private int this[ObjectiveLevel level] =>
        level switch
        {
            ObjectiveLevel.Rewritten => Rewritten,
            ObjectiveLevel.TransmitBlocks => Transmit,
            _ => Receive,
        };
}
