using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>The reusable description of a device type.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record DeviceProfile
{
    /// <summary>The id that devices name.</summary>
    public required Id<DeviceProfile> Id { get; init; }

    /// <summary>The version of the profile, from 1.</summary>
    public int Version { get; init; } = 1;

    /// <summary>The kind of device.</summary>
    public required DeviceKind Kind { get; init; }

    /// <summary>What people call the type.</summary>
    public required string Name { get; init; }

    /// <summary>The numbered runs of points, in order.</summary>
    public ValueList<PortGroup> PortGroups { get; init; }

    /// <summary>What may feed what inside the device.</summary>
    public ValueList<RoutingEntry> Routing { get; init; }

    /// <summary>Paths through processing, passive splits and selectors.</summary>
    public ValueList<ThroughEntry> Through { get; init; }

    /// <summary>Routes the device has until something overrides them.</summary>
    public ValueList<FactoryRoute> FactoryRoutes { get; init; }

    /// <summary>Limits of the device; null when there are none.</summary>
    public ProfileLimits? Limits { get; init; }

    /// <summary>Latency of port groups.</summary>
    public ValueList<GroupLatency> LatencyMilliseconds { get; init; }

    /// <summary>Sample rates it can run at, in hertz; empty when it does not matter.</summary>
    public ValueList<int> SampleRates { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
