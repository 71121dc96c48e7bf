using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Smaller profiles that are still sound: a group less, fewer points in a group, fewer routes, no limits.</summary>
internal static class ProfileShrinker
{
    public static IEnumerable<DeviceProfile> Shrink(DeviceProfile profile) => Candidates(profile).Where(IsSound);

    /// <summary>Fewer points can only break block routing, whose sources must be whole blocks.</summary>
    private static bool IsSound(DeviceProfile profile) =>
        profile.Routing.All(entry =>
            entry.Mode != RoutingMode.Block || profile.PortGroups.First(group => group.Id == entry.From).Count % (entry.BlockSize ?? 1) == 0
        );

    private static IEnumerable<DeviceProfile> Candidates(DeviceProfile profile)
    {
        for (var i = 0; i < profile.PortGroups.Count; i++)
        {
            var group = profile.PortGroups[i];
            yield return WithGroups(profile, profile.PortGroups.Where(other => other != group));
            if (group.Count is not { } count)
            {
                yield return Replace(profile, i, group with { Count = group.CountByRate.Min(entry => entry.Count), CountByRate = [] });
                continue;
            }

            var block = group.BlockSize ?? 1;
            foreach (var smaller in new[] { block, count / 2, count - block, count - 1 }.Where(smaller => smaller >= 1 && smaller < count).Distinct())
            {
                yield return Replace(profile, i, group with { Count = smaller, Bridged = [.. group.Bridged.Where(set => set.Jacks.Last <= smaller)] });
            }

            if (block > 1)
            {
                yield return Replace(profile, i, group with { BlockSize = null });
            }
        }

        for (var i = 0; i < profile.FactoryRoutes.Count; i++)
        {
            yield return profile with
            {
                FactoryRoutes = Without(profile.FactoryRoutes, i),
            };
        }

        for (var i = 0; i < profile.Routing.Count; i++)
        {
            yield return profile with
            {
                Routing = Without(profile.Routing, i),
            };
        }

        if (profile.Limits is not null)
        {
            yield return profile with
            {
                Limits = null,
            };
        }
    }

    internal static ValueList<T> Without<T>(ValueList<T> list, int index) => [.. list.AsSpan()[..index], .. list.AsSpan()[(index + 1)..]];

    private static DeviceProfile Replace(DeviceProfile profile, int index, PortGroup group) =>
        WithGroups(profile, profile.PortGroups.Select((other, i) => i == index ? group : other));

    private static DeviceProfile WithGroups(DeviceProfile profile, IEnumerable<PortGroup> groups)
    {
        var left = groups.ToArray();
        var kept = left.Where(group => group.Carrier is not { } carrier || left.Any(other => other.Id == carrier.Group)).ToValueList();
        return profile with
        {
            PortGroups = kept,
            Routing = [.. profile.Routing.Where(entry => Has(entry.From) && Has(entry.To))],
            Through = [.. profile.Through.Where(entry => Has(entry.From) && Has(entry.To))],
            FactoryRoutes = [.. profile.FactoryRoutes.Where(route => Fits(route.From) && Fits(route.To))],
            LatencyMilliseconds = [.. profile.LatencyMilliseconds.Where(entry => Has(entry.Group))],
        };

        bool Has(Id<PortGroup> id) => kept.Any(group => group.Id == id);

        bool Fits(GroupRange range) => kept.Any(group => group.Id == range.Group && (group.Count ?? group.CountByRate.Min(entry => entry.Count)) >= range.Last);
    }
}
