using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>What lies before an output.</summary>
internal static class OutputChain
{
    /// <summary>The output furthest up the chain that ends at an output; the output itself where the chain has no end.</summary>
    public static PointIndex First(RuleContext context, PointIndex output)
    {
        if (context.IsLooping(output))
        {
            return output;
        }

        var first = output;
        foreach (var point in context.Upward(output))
        {
            first = context.GroupOf(point).Kind == PortKind.Output ? point : first;
        }

        return first;
    }

    /// <summary>True when a route of the patch lies on the way up from a point.</summary>
    public static bool PassesRoute(RuleContext context, PointIndex point)
    {
        foreach (var passed in context.Upward(point))
        {
            if (context.Via(passed) == HopKind.Route)
            {
                return true;
            }
        }

        return false;
    }
}
