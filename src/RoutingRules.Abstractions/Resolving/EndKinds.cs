using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>At which port groups somebody hears what arrives.</summary>
internal static class EndKinds
{
    /// <summary>
    /// True where somebody hears with earpieces or headphones: groups marked so, outputs at headphone level, and in transmitter racks the inputs and
    /// receive slots, or what they are routed to.
    /// </summary>
    public static bool IsEar(DeviceNode device, GroupNode group) =>
        (group.Model.InEar && group.Kind is PortKind.Input or PortKind.Receive or PortKind.Sink or PortKind.Output)
        || IsHeadphone(group)
        || (device.Profile.Kind == DeviceKind.TransmitterRack && IsLast(device, group));

    /// <summary>True for an output at headphone level.</summary>
    public static bool IsHeadphone(GroupNode group) => group.Kind == PortKind.Output && group.Model.Level == SignalLevel.Headphone;

    /// <summary>
    /// True where loudspeakers sound: outputs at loudspeaker level, those of amplifiers of unknown level, and in powered loudspeakers the inputs and
    /// receive slots, or what they are routed to.
    /// </summary>
    public static bool IsLoudspeaker(DeviceNode device, GroupNode group) =>
        (
            group.Kind == PortKind.Output
            && (group.Model.Level == SignalLevel.Speaker || (group.Model.Level is null && device.Profile.Kind == DeviceKind.Amplifier))
        ) || (device.Profile.Kind == DeviceKind.Loudspeaker && IsLast(device, group));

    /// <summary>True for the points of a device at which signal from outside ends: what enters, or where it is routed on, what it is routed to.</summary>
    private static bool IsLast(DeviceNode device, GroupNode group) =>
        group.Kind switch
        {
            PortKind.Input or PortKind.Receive or PortKind.Sink => !IsRoutedOn(device, group),
            PortKind.Output => IsRoutedTo(device, group),
            _ => false,
        };

    private static bool IsRoutedOn(DeviceNode device, GroupNode group)
    {
        foreach (var entry in device.Profile.Routing)
        {
            if (entry.From == group.Id && device.Group(entry.To)?.Kind is PortKind.Sink or PortKind.Output)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsRoutedTo(DeviceNode device, GroupNode group)
    {
        foreach (var entry in device.Profile.Routing)
        {
            if (entry.To == group.Id && device.Group(entry.From)?.Kind is PortKind.Input or PortKind.Receive)
            {
                return true;
            }
        }

        return false;
    }
}
