namespace RoutingRules.Assignment.Wiring;

/// <summary>The best options found for the tasks of one part of a wiring.</summary>
internal sealed class WiringSolution
{
    /// <summary>True when the tasks are those with one for each sink.</summary>
    public bool IsApart { get; init; }

    /// <summary>One option for each task; null when there is no wiring.</summary>
    public required Choice[]? Choices { get; init; }

    /// <summary>What the part adds to the cost.</summary>
    public required WiringCost Cost { get; init; }

    /// <summary>True when no cheaper options exist.</summary>
    public required bool IsBest { get; init; }
}
