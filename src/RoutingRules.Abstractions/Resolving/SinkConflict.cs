namespace RoutingRules.Resolving;

/// <summary>A sink that two routes, streams, cables or links claim; the first in document order counts.</summary>
public sealed record SinkConflict
{
    /// <summary>The sink.</summary>
    public required PointIndex Sink { get; init; }

    /// <summary>What the one that counts is.</summary>
    public required HopKind FirstKind { get; init; }

    /// <summary>Its position in its list, from 0.</summary>
    public required int FirstIndex { get; init; }

    /// <summary>What the other one is.</summary>
    public required HopKind OtherKind { get; init; }

    /// <summary>Its position in its list, from 0.</summary>
    public required int OtherIndex { get; init; }

    /// <summary>The receiver of the stream, from 0, when the other one is a stream; else 0.</summary>
    public int OtherReceiver { get; init; }

    /// <summary>The point the other one would bring; none for a null route.</summary>
    public PointIndex OtherFrom { get; init; }
}
