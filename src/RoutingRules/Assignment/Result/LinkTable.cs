using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Counts how full each link is in each direction that a stream passes.</summary>
internal static class LinkTable
{
    /// <param name="problem">The problem.</param>
    /// <param name="result">The completed show.</param>
    /// <returns>By link in rig order, the direction from the first jack to the second before the other; directions without a stream left out.</returns>
    public static ValueList<LinkUse> Of(AssignmentProblem problem, ResolvedShow result)
    {
        var streams = result.Streams.Where(stream =>
            stream.State == ConnectionState.Connected && !stream.From.IsNone && !problem.IsExcluded[result.Graph.DeviceOf(stream.From).Index]
        );
        var loads = new LinkLoads(result, problem.Network, problem.Options.LinkPercent, streams, problem.IsExcluded);
        var table = new List<LinkUse>();
        for (var direction = 0; direction < loads.Streams.Length; direction++)
        {
            if (loads.Streams[direction] > 0)
            {
                table.Add(Use(result, loads, direction));
            }
        }

        return table.ToValueList();
    }

    /// <summary>The directions without room for one stream more on the way of a candidate; where all have, the fullest one that could be overfilled.</summary>
    public static ValueList<LinkUse> FullOn(AssignmentProblem problem, ResolvedShow result, Candidate candidate)
    {
        var streams = result.Streams.Where(stream =>
            stream.State == ConnectionState.Connected && !stream.From.IsNone && !problem.IsExcluded[result.Graph.DeviceOf(stream.From).Index]
        );
        var loads = new LinkLoads(result, problem.Network, problem.Options.LinkPercent, streams, problem.IsExcluded);
        var full = new SortedSet<int>();
        var (fullest, least) = (-1, long.MaxValue);
        foreach (var delivery in candidate.Deliveries)
        {
            foreach (var at in problem.Links.Crossed(delivery))
            {
                var direction = problem.Links.Directions[at];
                var room = loads.Most(direction) - loads.Staying[direction];
                var smallest = problem
                    .TransmitBlocks.Where(block => block.Device == delivery.Sender && !block.IsCarrier && !block.IsKept)
                    .Select(block => problem.Links.Rate(problem.Links.UnitOf(block.Id), at))
                    .DefaultIfEmpty(0)
                    .Min();
                if (room < smallest)
                {
                    full.Add(direction);
                }

                (fullest, least) = room < least ? (direction, room) : (fullest, least);
            }
        }

        if (full.Count == 0 && fullest >= 0)
        {
            full.Add(fullest);
        }

        return full.Select(direction => Use(result, loads, direction)).ToValueList();
    }

    private static LinkUse Use(ResolvedShow show, LinkLoads loads, int direction)
    {
        var link = show.Links[direction / 2].Model;
        var isForward = direction % 2 == 0;
        return new LinkUse
        {
            Link = link.Id,
            From = isForward ? link.From.Device : link.To.Device,
            To = isForward ? link.To.Device : link.From.Device,
            Streams = loads.Streams[direction],
            BitsPerSecond = loads.Staying[direction],
            MostBitsPerSecond = link.SpeedMbps is null ? null : loads.Most(direction),
        };
    }
}
