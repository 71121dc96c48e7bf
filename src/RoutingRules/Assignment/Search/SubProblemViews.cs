using RoutingRules.Assignment.Problem;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Search;

/// <summary>Turns the engine's layout of a part into what a strategy sees.</summary>
internal static class SubProblemViews
{
    public static PointIndex[] Points(int[] points) => Array.ConvertAll(points, point => new PointIndex(point));

    public static PartDemand[] Demands(AssignmentProblem problem, Part part)
    {
        var positions = new Dictionary<int, int>();
        for (var i = 0; i < part.Active.Length; i++)
        {
            positions.Add(part.Active[i], i);
        }

        return Array.ConvertAll(
            part.Active,
            index =>
            {
                var demand = problem.Demands[index];
                return new PartDemand
                {
                    Node = demand.Node,
                    Tier = demand.Tier,
                    Weight = demand.Weight,
                    IsFirm = part.IsFirm[index],
                    Preferred = demand.Preferred,
                    Set = demand.Set,
                    Part = demand.Part,
                    Group = demand.Group,
                    Candidates = Array.ConvertAll(part.Choices[index], choice => Of(demand.Candidates[choice])),
                    Separations =
                    [
                        .. demand
                            .Separations.Where(separate => positions.ContainsKey(separate.Other))
                            .Select(separate => new PartSeparation(positions[separate.Other], separate.By)),
                    ],
                };
            }
        );
    }

    public static PartTransmitBlock[] TransmitBlocks(AssignmentProblem problem) =>
        Array.ConvertAll(
            problem.TransmitBlocks,
            block => new PartTransmitBlock
            {
                Device = block.Device,
                First = new PointIndex(block.First),
                Width = block.Width,
                CarrierTo = block.CarrierTo,
                IsKept = block.IsKept,
                IsHeard = block.IsHeard,
                KeptNetwork = block.KeptNetwork,
                Bystanders = [.. block.Bystanders],
            }
        );

    public static PartReceiveBlock[] ReceiveBlocks(AssignmentProblem problem) =>
        Array.ConvertAll(
            problem.ReceiveBlocks,
            block => new PartReceiveBlock
            {
                Device = block.Device,
                PortGroup = block.PortGroup,
                First = new PointIndex(block.First),
                Width = block.Width,
                CarrierFrom = block.CarrierFrom,
                InputStart = new PointIndex(block.InputStart),
                IsKept = block.IsKept,
            }
        );

    public static PartLink[] Links(AssignmentProblem problem)
    {
        var links = new PartLink[problem.Links.Count];
        for (var at = 0; at < links.Length; at++)
        {
            links[at] = new PartLink
            {
                Link = problem.Links.Directions[at] / 2,
                IsForward = problem.Links.Directions[at] % 2 == 0,
                Room = Math.Max(0, problem.Links.Most[at] - problem.Links.Staying[at]),
                Staying =
                [
                    .. problem.TransmitBlocks.Where(block => problem.Links.IsCrossedByStaying(problem.Links.UnitOf(block.Id), at)).Select(block => block.Id),
                ],
            };
        }

        return links;
    }

    private static PartCandidate Of(Candidate candidate) =>
        new()
        {
            First = new PointIndex(candidate.First),
            Device = candidate.Device,
            PortGroup = candidate.PortGroup,
            Number = candidate.Number,
            IsExisting = candidate.IsExisting,
            AsksForSpares = candidate.AsksForSpares,
            Claims = Points(candidate.Claims),
            Deliveries = Array.ConvertAll(
                candidate.Deliveries,
                delivery => new PartDelivery(new PointIndex(delivery.Source), new PointIndex(delivery.Sink), delivery.Width, delivery.Sender, delivery.Receiver)
            ),
            Failed = candidate.Failed,
        };
}
