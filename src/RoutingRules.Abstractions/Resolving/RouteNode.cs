using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A route of the patch with its points.</summary>
public sealed class RouteNode
{
    /// <summary>The route as written.</summary>
    public required Route Model { get; init; }

    /// <summary>Position in the patch, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First source; none for a null route or when not connected.</summary>
    public PointIndex From { get; init; }

    /// <summary>First sink; none when not connected.</summary>
    public PointIndex To { get; init; }

    /// <summary>Whether it connects.</summary>
    public required ConnectionState State { get; init; }

    /// <summary>True when it clears its sinks.</summary>
    public bool IsNull => Model.From is null;
}
