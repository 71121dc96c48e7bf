using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>One output of the rig as the subject of a rule.</summary>
public readonly record struct OutputSubject
{
    internal OutputSubject(DeviceNode device, GroupNode group, PointIndex point)
    {
        Device = device;
        Group = group;
        Point = point;
    }

    /// <summary>The device.</summary>
    public DeviceNode Device { get; }

    /// <summary>The port group.</summary>
    public GroupNode Group { get; }

    /// <summary>The point.</summary>
    public PointIndex Point { get; }
}
