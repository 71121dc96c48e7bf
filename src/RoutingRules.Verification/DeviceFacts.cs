using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>A device as the verifier sees it.</summary>
internal sealed class DeviceFacts(Device model, int index, DeviceProfile? profile, bool isExcluded)
{
    private readonly Dictionary<Id<PortGroup>, GroupFacts> byId = [];
    private readonly List<GroupFacts> groups = [];

    public Device Model { get; } = model;

    /// <summary>Position in the rig.</summary>
    public int Index { get; } = index;

    /// <summary>Null when nobody knows the profile: then the device has no points.</summary>
    public DeviceProfile? Profile { get; } = profile;

    public bool IsExcluded { get; } = isExcluded;

    public IReadOnlyList<GroupFacts> Groups => groups;

    public GroupFacts? Group(Id<PortGroup> id) => byId.GetValueOrDefault(id);

    public bool IsKind(DeviceKind kind) => Profile is { } profile && profile.Kind == kind;

    /// <summary>Lays out the groups at a sample rate.</summary>
    public void Build(int sampleRate)
    {
        if (Profile is null)
            return;

        foreach (var group in Profile.PortGroups)
        {
            var facts = new GroupFacts(this, groups.Count, group, CountAt(group, sampleRate));
            if (byId.TryAdd(group.Id, facts))
                groups.Add(facts);
        }

        foreach (var group in groups)
            group.Connect(Profile);
    }

    private static int CountAt(PortGroup group, int sampleRate)
    {
        if (group.Count is { } count)
            return count;

        foreach (var entry in group.CountByRate)
        {
            if (entry.SampleRate == sampleRate)
                return entry.Count;
        }

        return group.CountByRate.IsEmpty ? 0 : group.CountByRate[0].Count;
    }
}
