using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Silences what still sounds once everything wanted is written, though nobody placed it.</summary>
internal sealed class Leftovers(AssignmentProblem problem, PlacedPoints placed, WantedRoutes routes)
{
    private readonly SignalGraph graph = problem.Show.Graph;

    /// <summary>Channels that no line with a place names and that would have carried a placed line.</summary>
    public List<PointIndex> Cleared { get; } = [];

    /// <summary>Clears outputs that sound though nobody placed it, and channels that carry a line they are not named for.</summary>
    /// <param name="result">The show as it is written so far.</param>
    /// <returns>True when something changed.</returns>
    public bool Clear(ResolvedShow result)
    {
        var changed = false;
        foreach (var device in result.Devices)
        {
            if (problem.IsExcluded[device.Index])
            {
                continue;
            }

            foreach (var group in device.Groups)
            {
                for (var i = 0; i < group.Count; i++)
                {
                    var point = device.FirstPoint + group.Offset + i;
                    if (group.Kind == PortKind.Output && IsStray(result.Graph, point))
                    {
                        changed |= SilenceStray(result.Graph, point);
                    }
                    else if (group.Kind == PortKind.Sink && device.Profile.Kind == DeviceKind.Console && CarriesPlacedLine(result.Graph, point))
                    {
                        changed |= Silence(result.Graph, point);
                        Cleared.Add(new PointIndex(point));
                    }
                }
            }
        }

        return changed;
    }

    /// <summary>
    /// True when an output carries a source over a stream or a route of the patch and no placed point lies on the way. What a cable or processing
    /// brings to a device is judged where it comes from: the routes of a processor are never cleared for its sake. A source that a feed names counts
    /// also while it is silent: next time its feed would seem to be served there.
    /// </summary>
    private bool IsStray(SignalGraph result, int output)
    {
        if ((result.Origins[output] < 0 && !CarriesFeed(result, output)) || (problem.Options.KeepUnlisted && result.Origins[output] == graph.Origins[output]))
        {
            return false;
        }

        var isPatched = false;
        var isStreamed = false;
        foreach (var up in result.Upward(new PointIndex(output)))
        {
            var point = up.Value;
            if (placed.Outputs.Contains(point) || (!isStreamed && result.Hops[point] is HopKind.Cable or HopKind.Through))
            {
                return false;
            }

            isStreamed |= result.Hops[point] is HopKind.Stream;
            isPatched |= isStreamed || result.Hops[point] is HopKind.Route || result.Upstreams[point] != graph.Upstreams[point];
        }

        return isPatched;
    }

    private bool CarriesFeed(SignalGraph result, int output)
    {
        foreach (var point in result.Upward(new PointIndex(output)))
        {
            if (placed.FeedSources.Contains(point.Value))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Silences a stray at the output, or where the output always takes its slot of a multicore, at the slot that is sent.</summary>
    private bool SilenceStray(SignalGraph result, int output)
    {
        if (Silence(result, output))
        {
            return true;
        }

        for (var point = output; point >= 0 && result.Hops[point] != HopKind.Stream; point = result.Upstreams[point])
        {
            if (result.Hops[point] == HopKind.Route && !routes.Speaks(point))
            {
                return Silence(result, point);
            }
        }

        return false;
    }

    private bool CarriesPlacedLine(SignalGraph result, int sink)
    {
        if (result.Origins[sink] < 0 || placed.NamedSinks.Contains(sink))
        {
            return false;
        }

        for (var point = sink; point >= 0; point = result.Upstreams[point])
        {
            if (placed.Lines.Contains(point))
            {
                return true;
            }
        }

        return false;
    }

    private bool Silence(SignalGraph result, int sink)
    {
        switch (result.Hops[sink])
        {
            case HopKind.Route
            or HopKind.Factory when graph.RoutingBetween(new PointIndex(result.Upstreams[sink]), new PointIndex(sink)) is { Mode: RoutingMode.Block } entry:
                return SilenceBlock(sink, entry.BlockSize ?? 1);
            case HopKind.Route:
                routes.Clear(sink);
                return true;
            case HopKind.Factory:
            case HopKind.Fixed when graph.IsClearable(new PointIndex(sink)):
                routes.Silence(sink);
                return true;
            default:
                return false;
        }
    }

    /// <summary>A device that routes in blocks clears in blocks; a block with a placed output stays.</summary>
    private bool SilenceBlock(int sink, int size)
    {
        var number = graph.NumberOf(new PointIndex(sink)) - 1;
        var first = sink - (number % size);
        var last = Math.Min(first + size, sink - number + graph.GroupOf(new PointIndex(sink)).Count) - 1;
        for (var other = first; other <= last; other++)
        {
            if (placed.Outputs.Contains(other) || placed.NamedSinks.Contains(other))
            {
                return false;
            }
        }

        for (var other = first; other <= last; other++)
        {
            routes.Clear(other);
            if (graph.GroupOf(new PointIndex(other)).Kind == PortKind.Sink)
            {
                Cleared.Add(new PointIndex(other));
            }
        }

        return true;
    }
}
