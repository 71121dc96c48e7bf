namespace RoutingRules.Configuration;

/// <summary>What a crew writes in a cell, and what it means.</summary>
public sealed record ListWord
{
    /// <summary>The member of a feed or a line that the cell is of.</summary>
    public required string Member { get; init; }

    /// <summary>What stands in the cell, such as <c>48 V</c>; case and blanks around it do not matter.</summary>
    public required string Cell { get; init; }

    /// <summary>What is read instead, such as <c>required</c>; empty for an empty cell.</summary>
    public required string Value { get; init; }
}
