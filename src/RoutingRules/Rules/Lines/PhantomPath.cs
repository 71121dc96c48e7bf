using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Follows a line from where it enters to the inputs that could power it.</summary>
internal static class PhantomPath
{
    /// <summary>The inputs that can supply phantom power to what is plugged in at a point: itself, and those that passive paths and cables lead to. In the order found.</summary>
    public static List<PointIndex> Supplies(RuleContext context, PointIndex entry)
    {
        var supplies = new List<PointIndex>();
        List<PointIndex>? passed = null;
        for (var done = -1; done < (passed?.Count ?? 0); done++)
        {
            var point = done < 0 ? entry : passed![done];
            var group = context.GroupOf(point);
            if (group is { Kind: PortKind.Input, Model.Phantom: true })
            {
                supplies.Add(point);
            }

            foreach (var index in context.Fed(point))
            {
                var next = new PointIndex(index);
                // Nothing but the start can be met twice: every point has one that feeds it.
                if (next != entry && (context.Via(next) == HopKind.Cable || IsPassing(context, point, next)))
                {
                    (passed ??= []).Add(next);
                }
            }
        }

        return supplies;
    }

    /// <summary>True when phantom power passes from the far side of a path to the near one.</summary>
    public static bool IsPassing(RuleContext context, PointIndex from, PointIndex to)
    {
        if (context.Via(to) != HopKind.Through)
        {
            return false;
        }

        var fromGroup = context.GroupOf(from).Id;
        var toGroup = context.GroupOf(to).Id;
        foreach (var path in context.DeviceOf(to).Profile.Through)
        {
            if (path.From == fromGroup && path.To == toGroup)
            {
                return path is { Kind: ThroughKind.Passive, Phantom: true };
            }
        }

        return false;
    }
}
