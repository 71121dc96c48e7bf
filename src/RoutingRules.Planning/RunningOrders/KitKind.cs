namespace RoutingRules.Planning.RunningOrders;

/// <summary>Kinds of things that acts need.</summary>
public enum KitKind
{
    /// <summary>Microphones, boxes and whatever else a line names as its equipment.</summary>
    Equipment,

    /// <summary>Stands.</summary>
    Stand,

    /// <summary>In-ear packs.</summary>
    Pack,
}
