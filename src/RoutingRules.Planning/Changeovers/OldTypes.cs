using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Types of device that the second show describes otherwise than the first: what comes in on the way is of the second kind.</summary>
internal static class OldTypes
{
    /// <summary>The first show with such types under other ids, beside the ids that the second show uses.</summary>
    public static Show Apart(Show before, Rig after)
    {
        var ids = new Dictionary<Id<DeviceProfile>, Id<DeviceProfile>>();
        foreach (var profile in before.Rig.Profiles)
        {
            if (after.Profiles.FirstOrDefault(other => other.Id == profile.Id) is { } now && now != profile)
            {
                ids.TryAdd(profile.Id, Free(profile.Id, before.Rig, after));
            }
        }

        return ids.Count == 0
            ? before
            : before with
            {
                Rig = before.Rig with
                {
                    Profiles = before
                        .Rig.Profiles.Select(profile => profile with { Id = ids.GetValueOrDefault(profile.Id, profile.Id) })
                        .Concat(after.Profiles.Where(profile => ids.ContainsKey(profile.Id)))
                        .ToValueList(),
                    Devices = before
                        .Rig.Devices.Select(device => device with { Profile = ids.GetValueOrDefault(device.Profile, device.Profile) })
                        .ToValueList(),
                },
            };
    }

    private static Id<DeviceProfile> Free(Id<DeviceProfile> id, Rig before, Rig after)
    {
        var name = $"{id}-before";
        while (before.Profiles.Concat(after.Profiles).Any(profile => profile.Id.Value == name))
        {
            name += "-before";
        }

        return new(name);
    }
}
