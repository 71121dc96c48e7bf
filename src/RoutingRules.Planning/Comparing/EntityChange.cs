using RoutingRules.Model;

namespace RoutingRules.Planning.Comparing;

/// <summary>A change of one entity of the model: a device, a link, a feed, a route.</summary>
public sealed record EntityChange
{
    /// <summary>The JSON Pointer of its list, such as <c>/rig/devices</c>; empty for the show itself.</summary>
    public required string List { get; init; }

    /// <summary>What it is, in the singular: <c>device</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>Its id, or for things without one their points; the new id of one that was renamed; empty for the show itself.</summary>
    public required string Id { get; init; }

    /// <summary>The id before; null unless it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>What became of it.</summary>
    public required EntityChangeKind Change { get; init; }

    /// <summary>The members that differ, in the order of the format; empty unless it changed or was renamed.</summary>
    public ValueList<MemberChange> Members { get; init; }
}
