using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Resilience;

/// <summary>Outputs that are free to take a feed over.</summary>
internal static class FreeRuns
{
    /// <summary>True for a free run from which a demand would get into nobody's ears unless it is in somebody's now.</summary>
    public static bool IsFree(RuleContext context, PointIndex first, DemandNode demand) =>
        (IsInEars(context, demand) || !EarDemands.IsHeard(context.Ears, first, demand.Width)) && IsFree(context, first, demand.Width);

    /// <summary>True for a demand that is in-ear, by its role or by where it ends.</summary>
    public static bool IsInEars(RuleContext context, DemandNode demand) =>
        demand.Feed is { } feed && (feed.Model.Role == FeedRole.InEar || EarDemands.IsHeard(context.Ears, demand.Existing, demand.Width));

    /// <summary>True when no demand is served there and none of the points is dead, reserved or without any source by the device.</summary>
    private static bool IsFree(RuleContext context, PointIndex first, int width)
    {
        for (var position = 0; position < width; position++)
        {
            if (
                context.DemandAt(first + position) is not null
                || context.MarkOf(first + position) is not null
                || context.FixedSource(first + position) is { IsNone: true }
            )
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// The first free run of the outputs of the port group a demand is in that is as wide and starts on an odd number for pairs; none when there is none.
    /// </summary>
    public static PointIndex InGroup(RuleContext context, DemandNode demand)
    {
        var width = demand.Width;
        var device = context.DeviceOf(demand.Existing);
        var group = context.GroupOf(demand.Existing);
        for (var offset = 0; group.Kind == PortKind.Output && offset + width <= group.Count; offset += width)
        {
            if (IsFree(context, device.First(group) + offset, demand))
            {
                return device.First(group) + offset;
            }
        }

        return PointIndex.None;
    }
}
