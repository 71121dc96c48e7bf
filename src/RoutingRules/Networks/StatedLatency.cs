using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Networks;

/// <summary>What profiles state of latency.</summary>
internal static class StatedLatency
{
    /// <summary>What a signal takes at a port group, in milliseconds; null where the profile states nothing.</summary>
    public static double? Of(DeviceProfile profile, Id<PortGroup> group)
    {
        foreach (var entry in profile.LatencyMilliseconds)
        {
            if (entry.Group == group)
            {
                return entry.Value;
            }
        }

        return null;
    }

    /// <summary>The way through a device from one group to another; null for none.</summary>
    public static ThroughEntry? Through(DeviceProfile profile, Id<PortGroup> from, Id<PortGroup> to)
    {
        foreach (var entry in profile.Through)
        {
            if (entry.From == from && entry.To == to)
            {
                return entry;
            }
        }

        return null;
    }
}
