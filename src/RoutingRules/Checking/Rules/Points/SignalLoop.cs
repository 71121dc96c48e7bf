using System.Globalization;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>
/// Reports paths that lead back to where they came from. Parallel circles through the same groups, such as the two halves of a pair, are one finding.
/// </summary>
public sealed class SignalLoop : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2004",
            Name = "signal-loop",
            Title = "Signal runs in a loop",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks = "No path through routes, processing, streams and cables comes back to a point it has passed.",
            Why = "No real source ever enters a closed loop; with gain in it, it howls.",
            Remedy = "Break the loop at one of the points named and patch the real source there.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, Re-entrant Mappings",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(context.PointCount);
        if (!context.HasLoops)
        {
            return;
        }

        var loops = Loops(context);
        for (var i = 0; i < loops.Count; )
        {
            var width = 1;
            while (i + width < loops.Count && AreParallel(context, loops[i], loops[i + width], width))
            {
                width++;
            }

            Report(context, loops[i], width);
            i += width;
        }
    }

    /// <summary>Each circle against the direction of signal, from its lowest point; circles by lowest point.</summary>
    private static List<List<PointIndex>> Loops(RuleContext context)
    {
        var loops = new List<List<PointIndex>>();
        var visited = new HashSet<int>();
        foreach (var device in context.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; i < group.Count; i++)
                {
                    var point = device.First(group) + i;
                    if (!context.IsLooping(point))
                    {
                        continue;
                    }

                    var path = new List<PointIndex>();
                    while (visited.Add(point.Value))
                    {
                        path.Add(point);
                        point = context.Upstream(point);
                    }

                    // A path that ran into an earlier one only leads away from a circle.
                    var start = path.IndexOf(point);
                    if (start >= 0)
                    {
                        loops.Add(FromLowest(path[start..]));
                    }
                }
            }
        }

        loops.Sort((x, y) => x[0].CompareTo(y[0]));
        return loops;
    }

    private static List<PointIndex> FromLowest(List<PointIndex> loop)
    {
        var lowest = loop.IndexOf(loop.Min());
        return [.. loop[lowest..], .. loop[..lowest]];
    }

    private static bool AreParallel(RuleContext context, List<PointIndex> loop, List<PointIndex> other, int distance)
    {
        for (var i = 0; i < loop.Count; i++)
        {
            if (
                other.Count != loop.Count
                || other[i] != loop[i] + distance
                || context.GroupOf(other[i]) != context.GroupOf(loop[i])
                || context.DeviceOf(other[i]) != context.DeviceOf(loop[i])
            )
            {
                return false;
            }
        }

        return true;
    }

    private static void Report(RuleContext context, List<PointIndex> loop, int width)
    {
        // Signal runs the other way round than the trace, starting at the same point.
        var points = new List<string>();
        for (var i = loop.Count; i > 0; i--)
        {
            points.Add(context.Address(loop[i % loop.Count], width).ToString());
        }

        var entities = points.ConvertAll(point => Entity.Of("point", point));
        context.Report(
            $"Signal runs in a loop and no real source enters it: {string.Join(" to ", points)} and back to {points[0]}.",
            Pointer(context, loop),
            entities.ToArray()
        );
    }

    private static string Pointer(RuleContext context, List<PointIndex> loop)
    {
        var best = (Rank: int.MaxValue, Index: 0);
        foreach (var point in loop)
        {
            var rank = context.Via(point) switch
            {
                HopKind.Route => 0,
                HopKind.Stream => 1,
                HopKind.Cable => 2,
                HopKind.Carrier => 3,
                _ => int.MaxValue,
            };
            if (rank < best.Rank || (rank == best.Rank && context.ViaIndex(point) < best.Index))
            {
                best = (rank, context.ViaIndex(point));
            }
        }

        var list = best.Rank switch
        {
            0 => "/patch/routes",
            1 => "/patch/streams",
            2 => "/rig/cables",
            3 => "/rig/links",
            _ => "/rig/devices",
        };
        var index = best.Rank == int.MaxValue ? context.DeviceOf(loop[0]).Index : best.Index;
        return string.Create(CultureInfo.InvariantCulture, $"{list}/{index}{(best.Rank == int.MaxValue ? "/profile" : "")}");
    }
}
