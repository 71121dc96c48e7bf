using RoutingRules.Profiles;

namespace RoutingRules.Model;

/// <summary>A device of the rig.</summary>
public sealed record Device
{
    /// <summary>The id that addresses start with.</summary>
    public required Id<Device> Id { get; init; }

    /// <summary>The profile that describes the device type.</summary>
    public required Id<DeviceProfile> Profile { get; init; }

    /// <summary>What is written on the device.</summary>
    public string? Label { get; init; }

    /// <summary>The zone the device stands in.</summary>
    public Id<Zone>? Zone { get; init; }

    /// <summary>Names of the supplies that feed the device.</summary>
    public ValueList<Id<PowerSource>> Power { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
