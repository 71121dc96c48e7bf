using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>A stream of the patch with its points.</summary>
public sealed class StreamNode
{
    /// <summary>The stream as written.</summary>
    public required AudioStream Model { get; init; }

    /// <summary>Position in the patch, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First transmit slot; none when the sender does not resolve.</summary>
    public PointIndex From { get; init; }

    /// <summary>Whether the sender end is sound.</summary>
    public required ConnectionState State { get; init; }

    /// <summary>The receivers, in document order.</summary>
    public required ValueList<ReceiverNode> Receivers { get; init; }
}
