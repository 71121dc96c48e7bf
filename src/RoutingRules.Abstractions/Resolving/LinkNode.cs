using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A network link of the rig with its jacks.</summary>
public sealed class LinkNode
{
    /// <summary>The link as written.</summary>
    public required Link Model { get; init; }

    /// <summary>Position in the rig, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Position of its network in the rig, from 0; -1 when unknown.</summary>
    public required int Network { get; init; }

    /// <summary>One jack; none when not connected.</summary>
    public PointIndex From { get; init; }

    /// <summary>The other jack; none when not connected.</summary>
    public PointIndex To { get; init; }

    /// <summary>Whether it connects.</summary>
    public required ConnectionState State { get; init; }
}
