using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>One step of a plan.</summary>
public sealed record FallbackStep
{
    /// <summary>What is done.</summary>
    public required FallbackStepKind Kind { get; init; }

    /// <summary>Where it is done: the device with the new place, the sender of a stream, the device of a route.</summary>
    public required Id<Device> Device { get; init; }

    /// <summary>The feed entry or line that is pulled, or plugged elsewhere; null for other steps.</summary>
    public string? Demand { get; init; }

    /// <summary>Where it was plugged.</summary>
    public PointRange? From { get; init; }

    /// <summary>Where it is plugged now.</summary>
    public PointRange? To { get; init; }

    /// <summary>The inputs at the other ends of all cables that move, point by point; empty for what the rig shows no cable for.</summary>
    public ValueList<Point> CableTo { get; init; }

    /// <summary>True when the new place has a cable of its own over which the document wants it heard, so that nothing has to be plugged.</summary>
    public bool HasOwnCable { get; init; }

    /// <summary>True when the new place is not one the document allows, such as one in another zone: it may need a longer cable.</summary>
    public bool IsElsewhere { get; init; }

    /// <summary>The stream that is set or taken away; null for other steps.</summary>
    public Id<AudioStream>? StreamId { get; init; }

    /// <summary>What the stream becomes; null when it is taken away, and for other steps.</summary>
    public AudioStream? Stream { get; init; }

    /// <summary>The route; null for other steps.</summary>
    public Route? Route { get; init; }
}
