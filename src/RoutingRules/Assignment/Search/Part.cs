namespace RoutingRules.Assignment.Search;

/// <summary>Demands that can be assigned without regard to the rest.</summary>
internal sealed class Part
{
    /// <summary>Positions of the demands, ascending.</summary>
    public required int[] Active { get; init; }

    /// <summary>For each demand of the show the candidates that may be chosen; empty for demands of other parts.</summary>
    public required int[][] Choices { get; init; }

    /// <summary>For each demand whether it must be placed.</summary>
    public required bool[] IsFirm { get; init; }
}
