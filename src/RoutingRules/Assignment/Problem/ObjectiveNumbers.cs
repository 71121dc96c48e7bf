namespace RoutingRules.Assignment.Problem;

/// <summary>Where each number of the objective stands in a vector, whatever order was asked for.</summary>
internal static class ObjectiveNumbers
{
    /// <summary>How many tiers of priority unplaced demands are counted in, from the first number on.</summary>
    public const int Tiers = 4;

    /// <summary>The first number of a level that may be reordered.</summary>
    public const int Levels = 6;

    public const int Sets = Levels + (int)ObjectiveLevel.Sets;
    public const int Groups = Levels + (int)ObjectiveLevel.Groups;
    public const int Distance = Levels + (int)ObjectiveLevel.Distance;
    public const int Order = Levels + (int)ObjectiveLevel.Order;
    public const int Rewritten = Levels + (int)ObjectiveLevel.Rewritten;
    public const int TransmitBlocks = Levels + (int)ObjectiveLevel.TransmitBlocks;
    public const int ReceiveBlocks = Levels + (int)ObjectiveLevel.ReceiveBlocks;
    public const int Numbers = Levels + (int)ObjectiveLevel.Numbers;

    /// <summary>The number that counts a demand when it moves: held ones weigh more than others.</summary>
    public static int Moved(bool isHeld) => isHeld ? Tiers : Tiers + 1;
}
