using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>Receive slots that took a stream before an assignment and take none after it.</summary>
public sealed record RemovedReceiver
{
    /// <summary>The stream of the input.</summary>
    public required Id<AudioStream> Stream { get; init; }

    /// <summary>The slots, as long a run as there is.</summary>
    public required PointRange At { get; init; }
}
