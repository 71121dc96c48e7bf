using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Resilience;

/// <summary>What supplies feed devices, as far as the rig says so.</summary>
internal static class Supplies
{
    /// <summary>True when the rig names two supplies or more: of one supply nothing can hang on another.</summary>
    public static bool HasTwo(RuleContext context)
    {
        Id<PowerSource>? first = null;
        foreach (var device in context.Devices)
        {
            foreach (var supply in device.Model.Power)
            {
                if (first is { } known && known != supply)
                {
                    return true;
                }

                first = supply;
            }
        }

        return false;
    }

    /// <summary>True when each of the devices names a supply.</summary>
    public static bool AreStated(List<DeviceNode> devices) => devices.TrueForAll(device => !device.Model.Power.IsEmpty);

    /// <summary>The only supply of all the devices; null when one has another, several or none stated.</summary>
    public static Id<PowerSource>? Common(List<DeviceNode> devices)
    {
        Id<PowerSource>? supply = null;
        foreach (var device in devices)
        {
            Id<PowerSource>? own = null;
            foreach (var named in device.Model.Power)
            {
                if (own is not null && own != named)
                {
                    return null;
                }

                own = named;
            }

            if (own is null || (supply is not null && supply != own))
            {
                return null;
            }

            supply = own;
        }

        return supply;
    }
}
