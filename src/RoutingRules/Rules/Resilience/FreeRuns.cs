using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Outputs that are free to take a feed over.</summary>
internal static class FreeRuns
{
    /// <summary>Parts of the model it reads.</summary>
    public const ModelSlices Reads = ModelSlices.Devices | ModelSlices.Feeds | ModelSlices.Lines;

    /// <summary>True when no demand is served there and none of the points is dead, reserved or without any source by the device.</summary>
    public static bool IsFree(RuleContext context, PointIndex first, int width)
    {
        for (var position = 0; position < width; position++)
        {
            if (context.DemandAt(first + position) is not null || context.MarkOf(first + position) is not null
                || context.FixedSource(first + position) is { IsNone: true })
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The first free run of a port group's outputs that is as wide as a demand and starts on an odd number for pairs; none when there is none.</summary>
    public static PointIndex InGroup(RuleContext context, PointIndex member, int width)
    {
        var device = context.DeviceOf(member);
        var group = context.GroupOf(member);
        for (var offset = 0; group.Kind == PortKind.Output && offset + width <= group.Count; offset += width)
        {
            if (IsFree(context, device.First(group) + offset, width))
            {
                return device.First(group) + offset;
            }
        }

        return PointIndex.None;
    }
}
