namespace RoutingRules.Assignment.Explaining;

/// <summary>How a demand came to its place.</summary>
public enum DecisionBasis
{
    /// <summary>The document names the place.</summary>
    Pinned,

    /// <summary>It was served there before and must stay.</summary>
    Held,

    /// <summary>It was served there before, and moving it would be no better.</summary>
    Kept,

    /// <summary>It is the best place found.</summary>
    Chosen,

    /// <summary>It has no place.</summary>
    Unplaced,
}
