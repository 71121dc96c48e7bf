using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>What a starting show must know about the profiles it names.</summary>
internal sealed class StarterProfiles(ProfileLibrary library)
{
    /// <summary>The profile.</summary>
    /// <exception cref="ArgumentException">There is none, or it cannot be read.</exception>
    public DeviceProfile Find(Id<DeviceProfile> id) =>
        library.Find(id) is not { } read ? throw new ArgumentException($"there is no profile '{id}'.")
        : read is { IsUsable: true, Value: { } profile } ? profile
        : throw new ArgumentException($"the profile '{id}' cannot be used: {read.Findings[0].Message}");

    /// <summary>How many points a group has; 0 without such a group.</summary>
    public int Count(Id<DeviceProfile> id, string group, PortKind kind) =>
        Find(id).PortGroups.FirstOrDefault(known => known.Id.Value == group && known.Kind == kind) is { } found ? CountOf(found) : 0;

    /// <summary>How many points of a kind a device has.</summary>
    public int Count(Id<DeviceProfile> id, PortKind kind) => Find(id).PortGroups.Where(group => group.Kind == kind).Sum(CountOf);

    /// <summary>The widest stream that a device sends: the largest block of its transmit slots, or all slots of a group without blocks.</summary>
    public int WidestStream(Id<DeviceProfile> id) =>
        Find(id)
            .PortGroups.Where(group => group.Kind == PortKind.Transmit && group.Carrier is null)
            .Select(group => group.BlockSize ?? CountOf(group))
            .DefaultIfEmpty()
            .Max();

    /// <summary>The outputs of a device that carry something without any patching.</summary>
    public IEnumerable<GroupRange> SoundingOutputs(Id<DeviceProfile> id)
    {
        var profile = Find(id);
        return profile
            .FactoryRoutes.Select(route => route.To)
            .Where(to => profile.PortGroups.Any(group => group.Id == to.Group && group.Kind == PortKind.Output));
    }

    /// <summary>The network jacks that links use: the group <c>net</c>, else the first one; null without any.</summary>
    public PortGroup? Jacks(Id<DeviceProfile> id) =>
        Find(id).PortGroups.Where(group => group.Kind == PortKind.Network).OrderByDescending(group => group.Id.Value == "net").FirstOrDefault();

    private static int CountOf(PortGroup group) =>
        group.Count ?? group.CountByRate.FirstOrDefault(rate => rate.SampleRate == StarterRig.SampleRate)?.Count ?? 0;
}
