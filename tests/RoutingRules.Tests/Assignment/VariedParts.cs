using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>What varied instances are put together from.</summary>
internal static class VariedParts
{
    public static List<Device> Boxes(Show show) => show.Rig.Devices.Where(device => device.Id.Value.StartsWith("box-", StringComparison.Ordinal)).ToList();

    public static DeviceProfile Profile(Show show, Device device) => show.Rig.Profiles.First(profile => profile.Id == device.Profile);

    public static int Count(Show show, Device device, string group) =>
        Profile(show, device).PortGroups.FirstOrDefault(other => other.Id.Value == group)?.Count ?? 0;

    public static PointRange Run(Id<Device> device, string group, int first, int width) => new(device, new(group), first, first + width - 1);

    public static Cable Plug(Device box, int output, string to, int input) => new() { From = Run(box.Id, "out", output, 1), To = Run(new(to), "in", input, 1) };

    public static Link Link(string id, string network, Id<Device> from, Id<Device> to) =>
        new()
        {
            Id = new(id),
            Network = new(network),
            From = Run(from, "net", 3, 1),
            To = Run(to, "net", 4, 1),
        };

    public static Show Add(
        Show show,
        string id,
        DeviceKind kind,
        ValueList<PortGroup> groups,
        ValueList<RoutingEntry> routing,
        ValueList<FactoryRoute> factory
    ) =>
        show with
        {
            Rig = show.Rig with
            {
                Devices =
                [
                    .. show.Rig.Devices,
                    new Device
                    {
                        Id = new(id),
                        Profile = new($"tiny/{id}"),
                        Zone = new Id<Zone>("left"),
                    },
                ],
                Profiles =
                [
                    .. show.Rig.Profiles,
                    new DeviceProfile
                    {
                        Id = new($"tiny/{id}"),
                        Kind = kind,
                        Name = "Tiny device",
                        PortGroups = groups,
                        Routing = routing,
                        FactoryRoutes = factory,
                    },
                ],
            },
        };
}
