using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>Follows a line from where it enters to the inputs that could power it.</summary>
internal static class PhantomPath
{
    /// <summary>The inputs that can supply phantom power to what is plugged in at a point, as a rule sees them.</summary>
    public static List<PointIndex> Supplies(RuleContext context, PointIndex entry) => Supplies(new ContextWalk(context), entry);

    /// <summary>Adds the inputs that can supply phantom power to what is plugged in at a point, as a rule sees them.</summary>
    public static void AddSupplies(RuleContext context, PointIndex entry, List<PointIndex> supplies) => AddSupplies(new ContextWalk(context), entry, supplies);

    /// <summary>
    /// The inputs that can supply phantom power to what is plugged in at a point: itself, and those that passive paths and cables lead to. In the order found.
    /// </summary>
    public static List<PointIndex> Supplies<TWalk>(TWalk walk, PointIndex entry)
        where TWalk : struct, ISignalWalk
    {
        var supplies = new List<PointIndex>();
        AddSupplies(walk, entry, supplies);
        return supplies;
    }

    private static void AddSupplies<TWalk>(TWalk walk, PointIndex entry, List<PointIndex> supplies)
        where TWalk : struct, ISignalWalk
    {
        List<PointIndex>? passed = null;
        for (var done = -1; done < (passed?.Count ?? 0); done++)
        {
            var point = done < 0 ? entry : passed![done];
            var group = walk.GroupOf(point);
            if (group is { Kind: PortKind.Input, Model.Phantom: true })
            {
                supplies.Add(point);
            }

            foreach (var index in walk.Fed(point))
            {
                var next = new PointIndex(index);
                // Nothing but the start can be met twice: every point has one that feeds it.
                if (next != entry && (walk.Via(next) == HopKind.Cable || IsPassing(walk, point, next)))
                {
                    (passed ??= []).Add(next);
                }
            }
        }
    }

    /// <summary>True when phantom power passes from the far side of a path to the near one, as a rule sees it.</summary>
    public static bool IsPassing(RuleContext context, PointIndex from, PointIndex to) => IsPassing(new ContextWalk(context), from, to);

    private static bool IsPassing<TWalk>(TWalk walk, PointIndex from, PointIndex to)
        where TWalk : struct, ISignalWalk
    {
        if (walk.Via(to) != HopKind.Through)
        {
            return false;
        }

        var fromGroup = walk.GroupOf(from).Id;
        var toGroup = walk.GroupOf(to).Id;
        foreach (var path in walk.DeviceOf(to).Profile.Through)
        {
            if (path.From == fromGroup && path.To == toGroup)
            {
                return path is { Kind: ThroughKind.Passive, Phantom: true };
            }
        }

        return false;
    }
}
