using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>How full a link is in one direction.</summary>
public sealed record LinkUse
{
    /// <summary>The link.</summary>
    public required Id<Link> Link { get; init; }

    /// <summary>The device at which the direction starts.</summary>
    public required Id<Device> From { get; init; }

    /// <summary>The device at which it ends.</summary>
    public required Id<Device> To { get; init; }

    /// <summary>Streams that pass, each once however many receivers it has.</summary>
    public required int Streams { get; init; }

    /// <summary>What they take together, in bit/s; streams of a transport whose packets the engine does not know count 0.</summary>
    public required long BitsPerSecond { get; init; }

    /// <summary>What they may take, in bit/s; null when the link has no speed.</summary>
    public long? MostBitsPerSecond { get; init; }
}
