namespace RoutingRules.Planning.LineChecks;

/// <summary>What a line check found at a connector.</summary>
public enum LineCheckWord
{
    /// <summary>It works; a mark that it does not is taken away.</summary>
    Works,

    /// <summary>It does not work.</summary>
    Dead,

    /// <summary>It is kept for somebody else.</summary>
    Reserved,

    /// <summary>What should be plugged here is plugged at the other, and the other way round.</summary>
    Swapped,

    /// <summary>What should be plugged here is plugged at the other, which was free.</summary>
    Moved,
}
