using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Tracing;

/// <summary>One step of a signal from a point to the next.</summary>
public sealed record TraceHop
{
    /// <summary>Where the step begins.</summary>
    public required TracePoint From { get; init; }

    /// <summary>Where it ends.</summary>
    public required TracePoint To { get; init; }

    /// <summary>What carries the signal.</summary>
    public required HopKind Kind { get; init; }

    /// <summary>Position of that route, stream, cable or link in its list of the document, from 0; null for what the profile does by itself.</summary>
    public int? Index { get; init; }

    /// <summary>The id of the stream or link; null for other steps.</summary>
    public string? Id { get; init; }

    /// <summary>The way the cable takes, as the document words it; null for other steps and when it says nothing.</summary>
    public string? Way { get; init; }

    /// <summary>The stream channel, from 1; null when no stream is taken.</summary>
    public int? StreamChannel { get; init; }

    /// <summary>The block of transmit slots, from 1; null when no stream is taken.</summary>
    public int? TransmitBlock { get; init; }

    /// <summary>The block of receive slots, from 1; null when no stream is taken.</summary>
    public int? ReceiveBlock { get; init; }

    /// <summary>The network links the stream walks, sender first; empty when its network has no links in the document.</summary>
    public ValueList<Id<Link>> Links { get; init; }

    /// <summary>False when the network joins the two devices by no path, so that the stream cannot arrive.</summary>
    public bool IsReachable { get; init; } = true;

    /// <summary>
    /// What the step itself takes, in milliseconds: the packet time of a stream, the processing of a path through a device; null when unknown or none.
    /// </summary>
    public double? LatencyMilliseconds { get; init; }
}
