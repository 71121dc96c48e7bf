using RoutingRules.Profiles;

namespace RoutingRules.Model;

/// <summary>Devices, network links and cables.</summary>
public sealed record Rig
{
    /// <summary>Declared places.</summary>
    public ValueList<Zone> Zones { get; init; }

    /// <summary>Clock domains.</summary>
    public ValueList<Clock> Clocks { get; init; }

    /// <summary>Audio networks, in order of preference.</summary>
    public ValueList<Network> Networks { get; init; }

    /// <summary>The devices, in list order.</summary>
    public ValueList<Device> Devices { get; init; }

    /// <summary>Network cables.</summary>
    public ValueList<Link> Links { get; init; }

    /// <summary>Audio cables from outputs to inputs.</summary>
    public ValueList<Cable> Cables { get; init; }

    /// <summary>Points that do not work.</summary>
    public ValueList<UnavailablePoints> Unavailable { get; init; }

    /// <summary>Points kept free for somebody else.</summary>
    public ValueList<ReservedPoints> Reserved { get; init; }

    /// <summary>Profiles written into the show; they win over every other source of profiles.</summary>
    public ValueList<DeviceProfile> Profiles { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
