namespace RoutingRules.Model;

/// <summary>How long the hand movements of a changeover take, in seconds. Common practice, no source: set them to what your crew needs.</summary>
public sealed record Pace
{
    /// <summary>To pull, plug or move one lead.</summary>
    public int SecondsToPlug { get; init; } = 30;

    /// <summary>To load one route, stream, phantom or gain setting, or to check one connection by eye.</summary>
    public int SecondsToLoad { get; init; } = 5;

    /// <summary>To mute or turn down one output or channel.</summary>
    public int SecondsToMute { get; init; } = 3;

    /// <summary>To listen to one output or channel.</summary>
    public int SecondsToListen { get; init; } = 15;

    /// <summary>To bring in, exchange or take out one device.</summary>
    public int SecondsForDevice { get; init; } = 300;

    /// <summary>To change one clock and see every device lock.</summary>
    public int SecondsForClock { get; init; } = 60;
}
