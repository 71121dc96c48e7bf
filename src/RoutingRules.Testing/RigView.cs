using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>The devices of a rig whose profiles are all written into it, with their port groups laid out.</summary>
internal sealed class RigView
{
    public RigView(Rig rig)
    {
        Rig = rig;
        var rate = rig.Clocks.Count > 0 ? rig.Clocks[0].SampleRate : 48_000;
        var devices = new List<(Device Device, DeviceProfile Profile)>();
        var groups = new List<GroupView>();
        foreach (var device in rig.Devices)
        {
            if (rig.Profiles.FirstOrDefault(profile => profile.Id == device.Profile) is not { } profile)
            {
                continue;
            }

            devices.Add((device, profile));
            foreach (var group in profile.PortGroups)
            {
                groups.Add(
                    new GroupView(device, profile, group, group.Count ?? group.CountByRate.FirstOrDefault(entry => entry.SampleRate == rate)?.Count ?? 0)
                );
            }
        }

        Devices = devices;
        Groups = groups;
    }

    public Rig Rig { get; }

    public IReadOnlyList<(Device Device, DeviceProfile Profile)> Devices { get; }

    public IReadOnlyList<GroupView> Groups { get; }

    public GroupView? Group(Id<Device> device, Id<PortGroup> group) =>
        Groups.FirstOrDefault(candidate => candidate.Device.Id == device && candidate.Group.Id == group);

    public GroupView? Group(PointRange range) => Group(range.Device, range.Group) is { } group && range.Last <= group.Count ? group : null;

    /// <summary>
    /// True when two devices are joined by links of the audio network, or have jacks when it has no links. Devices with jacks that are not bridged have one
    /// link at most.
    /// </summary>
    public bool Reaches(Id<Device> from, Id<Device> to)
    {
        var links = Rig.Links.Where(link => link.Network.Value == "audio").ToArray();
        if (links.Length == 0)
        {
            return Group(from, new("net")) is not null && Group(to, new("net")) is not null;
        }

        var reached = new HashSet<Id<Device>> { from };
        while (links.FirstOrDefault(link => reached.Contains(link.From.Device) != reached.Contains(link.To.Device)) is { } link)
        {
            reached.Add(link.From.Device);
            reached.Add(link.To.Device);
        }

        return reached.Contains(to);
    }

    public IEnumerable<GroupView> OfKind(params PortKind[] kinds) => Groups.Where(group => kinds.Contains(group.Group.Kind) && group.Count > 0);
}
