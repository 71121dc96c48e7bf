using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>One receiver of a stream with its points.</summary>
public sealed class ReceiverNode
{
    /// <summary>The receiver as written.</summary>
    public required StreamReceiver Model { get; init; }

    /// <summary>Position in the stream, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First receive slot; none when it does not resolve.</summary>
    public PointIndex At { get; init; }

    /// <summary>First stream channel it takes, from 1.</summary>
    public int FirstChannel { get; init; }

    /// <summary>Whether it connects.</summary>
    public required ConnectionState State { get; init; }
}
