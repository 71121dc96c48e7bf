using RoutingRules.Model;

namespace RoutingRules.Configuration;

/// <summary>What an assignment observes beyond the document.</summary>
public sealed record AssignmentConfig
{
    /// <summary>Usable outputs to leave free in each port group in which something new is placed, 0 to 65535.</summary>
    public int Spares { get; init; }

    /// <summary>Streams to leave free at each device, 0 to 65535.</summary>
    public int Headroom { get; init; }

    /// <summary>Milliseconds after which a feed or line must not arrive, above 0 to 1000; null for any. Recordings and broadcasts may be later.</summary>
    public double? LatencyMilliseconds { get; init; }

    /// <summary>The same for in-ear feeds; null for <see cref="LatencyMilliseconds"/>.</summary>
    public double? InEarLatencyMilliseconds { get; init; }

    /// <summary>The order of the softer aims, each once; empty for the usual order.</summary>
    public ValueList<AssignmentAim> Order { get; init; }

    /// <summary>Whether outputs may go on carrying what no feed asks for where the document already had it so.</summary>
    public bool KeepUnlisted { get; init; }

    /// <summary>The name of the strategy; null for the default one.</summary>
    public string? Strategy { get; init; }

    /// <summary>Work units after which the strategy stops with what it has, from 1 to 2^53 - 1; null for the usual bound.</summary>
    public long? Budget { get; init; }
}
