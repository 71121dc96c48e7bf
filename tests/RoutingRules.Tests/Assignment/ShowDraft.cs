using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>A show while things are added to it.</summary>
internal sealed class ShowDraft(Show show)
{
    public Show Show { get; set; } = show;

    public DeviceProfile Profile(Id<Device> id) => Show.Rig.Profiles.First(profile => profile.Id == Show.Rig.Devices.First(device => device.Id == id).Profile);

    public int Count(Id<Device> id, string group) => Profile(id).PortGroups.FirstOrDefault(found => found.Id.Value == group)?.Count ?? 0;

    public void Change(DeviceProfile profile) =>
        Show = Show with { Rig = Show.Rig with { Profiles = [.. Show.Rig.Profiles.Select(old => old.Id == profile.Id ? profile : old)] } };

    public void Add(string id, DeviceProfile profile, string zone) =>
        Show = Show with
        {
            Rig = Show.Rig with
            {
                Devices =
                [
                    .. Show.Rig.Devices,
                    new Device
                    {
                        Id = new(id),
                        Profile = new($"tiny/{id}"),
                        Zone = new(zone),
                    },
                ],
                Profiles = [.. Show.Rig.Profiles, profile with { Id = new($"tiny/{id}") }],
            },
        };

    public void Cable(PointRange from, PointRange to) =>
        Show = Show with { Rig = Show.Rig with { Cables = [.. Show.Rig.Cables, new Cable { From = from, To = to }] } };

    public void Route(PointRange? from, PointRange to) =>
        Show = Show with { Patch = Show.Patch with { Routes = [.. Show.Patch.Routes, new Route { From = from, To = to }] } };

    public static PointRange Run(Id<Device> device, string group, int first, int width = 1) => new(device, new(group), first, first + width - 1);

    public static DeviceProfile Device(DeviceKind kind, params PortGroup[] groups) =>
        new()
        {
            Id = new("tiny/any"),
            Kind = kind,
            Name = "Grown device",
            PortGroups = [.. groups],
        };

    public void Link(string id, string network, PointRange from, PointRange to) =>
        Show = Show with
        {
            Rig = Show.Rig with
            {
                Links =
                [
                    .. Show.Rig.Links,
                    new Link
                    {
                        Id = new(id),
                        Network = new(network),
                        From = from,
                        To = to,
                    },
                ],
            },
        };

    public void Mark(PointRange at, bool isDead) =>
        Show = Show with
        {
            Rig = isDead
                ? Show.Rig with
                {
                    Unavailable = [.. Show.Rig.Unavailable, new UnavailablePoints { At = at }],
                }
                : Show.Rig with
                {
                    Reserved = [.. Show.Rig.Reserved, new ReservedPoints { At = at }],
                },
        };
}
