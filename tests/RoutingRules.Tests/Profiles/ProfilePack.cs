using RoutingRules.Documents;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Profiles;

/// <summary>The generic profiles, read once for all tests of their content.</summary>
internal static class ProfilePack
{
    /// <summary>Every profile, in the order of ids.</summary>
    public static IReadOnlyList<DeviceProfile> All { get; } = Read();

    public static TheoryData<string> Ids { get; } = new(All.Select(profile => profile.Id.Value));

    public static DeviceProfile Get(string id) => All.Single(profile => profile.Id.Value == id);

    public static IEnumerable<(DeviceProfile Profile, PortGroup Group)> Groups(PortKind kind) =>
        All.SelectMany(profile => profile.PortGroups.Where(group => group.Kind == kind).Select(group => (profile, group)));

    /// <summary>The largest count of a group at any sample rate.</summary>
    public static int Largest(this PortGroup group) => group.Count ?? group.CountByRate.Max(entry => entry.Count);

    private static DeviceProfile[] Read()
    {
        var source = new GenericProfiles();
        return [.. source.Ids.Select(id => ProfileReader.Read(source.TryFind(id, out var json) ? json.Span : default).Value!)];
    }
}
