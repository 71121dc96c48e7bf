using RoutingRules.Assignment.Problem;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Assignment.Search;

/// <summary>Splits the demands into parts that share no point, block, limit, link that may fill up, set, group or separation.</summary>
internal static class SubProblemFinder
{
    public static List<int[]> Find(AssignmentProblem problem, int[][] choices)
    {
        var demandCount = problem.Demands.Length;
        var devices = problem.DeviceCount;
        var sets = demandCount;
        var nodes = new DisjointSets(demandCount + (3 * devices) + (2 * demandCount) + problem.Show.Graph.PointCount + problem.Links.Count);
        var firstDevice = demandCount;
        var firstSet = firstDevice + (3 * devices);
        var firstGroup = firstSet + sets;
        var firstPoint = firstGroup + demandCount;
        var firstLink = firstPoint + problem.Show.Graph.PointCount;
        JoinByBystanders(problem, nodes, firstDevice, firstLink);
        foreach (var demand in problem.Demands)
        {
            foreach (var choice in choices[demand.Index])
            {
                var candidate = demand.Candidates[choice];
                foreach (var delivery in candidate.Deliveries)
                {
                    if (problem.TransmitBlockOf[delivery.Sink] >= 0)
                    {
                        nodes.Join(demand.Index, firstDevice + delivery.Sender);
                    }

                    if (!delivery.IsLocal)
                    {
                        nodes.Join(demand.Index, firstDevice + delivery.Sender);
                        nodes.Join(demand.Index, firstDevice + devices + delivery.Receiver);
                        foreach (var at in problem.Links.Crossed(delivery))
                        {
                            nodes.Join(demand.Index, firstLink + at);
                        }
                    }
                }

                if (problem.Options.Spares > 0 && demand.Node.Feed is not null)
                {
                    nodes.Join(demand.Index, firstDevice + (2 * devices) + candidate.Device);
                }

                foreach (var point in candidate.Claims)
                {
                    nodes.Join(demand.Index, firstPoint + point);
                }
            }

            if (demand.Set >= 0)
            {
                nodes.Join(demand.Index, firstSet + demand.Set);
            }

            if (demand.Group >= 0)
            {
                nodes.Join(demand.Index, firstGroup + demand.Group);
            }

            foreach (var separate in demand.Separations)
            {
                nodes.Join(demand.Index, separate.Other);
            }
        }

        JoinByPortGroup(problem, choices, nodes);
        return [.. problem.Demands.Select(demand => demand.Index).GroupBy(nodes.Find).Select(part => part.ToArray())];
    }

    /// <summary>A stream goes on to receivers that no demand mentions, over links that others may want.</summary>
    private static void JoinByBystanders(AssignmentProblem problem, DisjointSets nodes, int firstDevice, int firstLink)
    {
        foreach (var block in problem.Links.Count > 0 ? problem.TransmitBlocks : [])
        {
            foreach (var other in block.Bystanders)
            {
                var receiver = problem.ReceiveBlocks[other].Device;
                foreach (var at in problem.Links.Crossed(problem.NetworkFrom(block.Device, receiver), block.Device, receiver))
                {
                    nodes.Join(firstDevice + block.Device, firstLink + at);
                }
            }
        }
    }

    /// <summary>Demands with points in one port group may oppose the list order, so they belong together.</summary>
    private static void JoinByPortGroup(AssignmentProblem problem, int[][] choices, DisjointSets nodes)
    {
        var firstIn = new Dictionary<int, int>();
        foreach (var demand in problem.Demands)
        {
            foreach (var choice in choices[demand.Index])
            {
                var group = demand.Candidates[choice].PortGroup;
                if (!firstIn.TryAdd(group, demand.Index))
                {
                    nodes.Join(demand.Index, firstIn[group]);
                }
            }
        }
    }
}
