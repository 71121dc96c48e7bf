namespace RoutingRules.Profiles;

/// <summary>How many points a group has at a sample rate.</summary>
public sealed record RateCount
{
    /// <summary>Sample rate in hertz, 8000 to 384000.</summary>
    public required int SampleRate { get; init; }

    /// <summary>How many points, 0 to 65535.</summary>
    public required int Count { get; init; }
}
