namespace RoutingRules.Planning.Comparing;

/// <summary>What became of an entity of the model.</summary>
public enum EntityChangeKind
{
    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is gone.</summary>
    Removed,

    /// <summary>It has another id; members may have changed as well.</summary>
    Renamed,

    /// <summary>Members have changed.</summary>
    Changed,

    /// <summary>It stands at another place among the others of its list.</summary>
    Reordered,
}
