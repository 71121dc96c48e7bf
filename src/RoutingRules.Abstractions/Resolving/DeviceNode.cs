using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>A device of the rig with its profile and its place among the points of the graph.</summary>
public sealed class DeviceNode
{
    internal DeviceNode(Device model, int index, CompiledProfile type, int sampleRate, int firstPoint, Zone? zone)
    {
        Model = model;
        Index = index;
        Type = type;
        SampleRate = sampleRate;
        FirstPoint = firstPoint;
        Zone = zone;
    }

    /// <summary>The device as the rig writes it.</summary>
    public Device Model { get; }

    /// <summary>The id.</summary>
    public Id<Device> Id => Model.Id;

    /// <summary>Position in the rig, from 0.</summary>
    public int Index { get; }

    /// <summary>The profile.</summary>
    public DeviceProfile Profile => Type.Model;

    /// <summary>Whether the profile it names was found; where it was not, <see cref="Profile"/> is an empty one.</summary>
    public ProfileState ProfileState { get; internal init; }

    /// <summary>The port groups, in profile order.</summary>
    public ValueList<GroupNode> Groups => ValueList.Adopt(Type.Groups);

    /// <summary>The zone the device stands in; null when it names none or an unknown one.</summary>
    public Zone? Zone { get; }

    /// <summary>The sample rate in hertz that decides the counts of its groups.</summary>
    public int SampleRate { get; }

    /// <summary>The label, or else the id.</summary>
    public string DisplayName => Model.Label ?? Model.Id.Value;

    internal CompiledProfile Type { get; }

    internal int FirstPoint { get; }

    /// <summary>The group of an id, or null.</summary>
    public GroupNode? Group(Id<PortGroup> id)
    {
        foreach (var group in Type.Groups)
        {
            if (group.Id == id)
            {
                return group;
            }
        }

        return null;
    }

    /// <summary>The first point of a group.</summary>
    public PointIndex First(GroupNode group)
    {
        ArgumentNullException.ThrowIfNull(group);
        return new PointIndex(FirstPoint + group.Offset);
    }
}
