namespace RoutingRules.Model;

/// <summary>What keeps a loop of network links from flooding.</summary>
public enum LoopControl
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A spanning tree protocol (IEEE 802.1Q).</summary>
    SpanningTree,

    /// <summary>A ring protocol that blocks one link (IEC 62439-2).</summary>
    RingProtocol,

    /// <summary>Duplicate and discard (IEC 62439-3, IEEE 802.1CB).</summary>
    SeamlessDuplicates,
}
