using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A cable of the rig with its points.</summary>
public sealed class CableNode
{
    /// <summary>The cable as written.</summary>
    public required Cable Model { get; init; }

    /// <summary>Position in the rig, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First output; none when not connected.</summary>
    public PointIndex From { get; init; }

    /// <summary>First input; none when not connected.</summary>
    public PointIndex To { get; init; }

    /// <summary>Whether it connects.</summary>
    public required ConnectionState State { get; init; }
}
