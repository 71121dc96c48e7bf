using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>What one group may feed in another.</summary>
public sealed record RoutingEntry
{
    /// <summary>The group of sources.</summary>
    public required Id<PortGroup> From { get; init; }

    /// <summary>The group of sinks.</summary>
    public required Id<PortGroup> To { get; init; }

    /// <summary>How freely.</summary>
    public required RoutingMode Mode { get; init; }

    /// <summary>For mode block: how many channels move together (IS-08 block_size).</summary>
    public int? BlockSize { get; init; }

    /// <summary>For mode block: whether the offset may differ from block to block (IS-08 reordering).</summary>
    public bool Reordering { get; init; }

    /// <summary>For mode fixed: whether a sink can be set to nothing.</summary>
    public bool Clearable { get; init; }
}
