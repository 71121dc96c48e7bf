using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>What a strategy proposes for a part.</summary>
public sealed record StrategyAnswer
{
    /// <summary>The choice of a demand that is left out.</summary>
    public const int LeftOut = -1;

    /// <summary>For each demand of the part the position of a candidate, or <see cref="LeftOut"/>.</summary>
    public required ValueList<int> Choices { get; init; }

    /// <summary>
    /// How many of the 14 numbers, from the first on in the order asked for, are proven to be as small as can be: 0 to 14.
    /// More than 6 also means that no other demands could be left out by the rule between the second and the third level.
    /// </summary>
    public int ProvenNumbers { get; init; }
}
