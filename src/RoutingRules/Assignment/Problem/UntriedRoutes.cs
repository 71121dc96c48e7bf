using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>
/// Tells whether a show has routes in blocks that an assignment does not try, so that nothing can be claimed about what is impossible or best.
/// </summary>
internal sealed class UntriedRoutes
{
    private readonly AssignmentProblem problem;
    private readonly SignalGraph graph;
    private readonly bool[] routesInBlocks;
    private readonly HashSet<(int Device, int Source)> sending = [];
    private readonly HashSet<int> taking = [];

    public UntriedRoutes(AssignmentProblem problem)
    {
        this.problem = problem;
        graph = problem.Show.Graph;
        routesInBlocks = [.. problem.Show.Devices.Select(device => device.Profile.Routing.Any(entry => entry.Mode == RoutingMode.Block))];
    }

    /// <summary>The devices whose blocks could serve a demand at other numbers than those tried, in device order; mostly none.</summary>
    public List<DeviceNode> Devices()
    {
        var found = new SortedSet<int>();
        foreach (var demand in Array.Exists(routesInBlocks, device => device) ? problem.Show.Demands : [])
        {
            foreach (var run in demand.Allowed.Append(demand.Existing).Where(run => !run.IsNone))
            {
                var ways = demand.Feed is { } feed ? [(feed.Source, run)] : demand.Line!.Sinks.Select(sink => (run, sink));
                foreach (var (source, sink) in ways.Where(way => !way.Item1.IsNone && !way.Item2.IsNone))
                {
                    for (var position = 0; position < demand.Width; position++)
                    {
                        Add(source.Value + position, sink.Value + position, found);
                    }
                }
            }
        }

        return [.. found.Select(index => problem.Show.Devices[index])];
    }

    private void Add(int source, int sink, SortedSet<int> found)
    {
        var (sender, receiver) = (graph.DeviceOf(new PointIndex(source)).Index, graph.DeviceOf(new PointIndex(sink)).Index);
        if (problem.IsExcluded[sender] || problem.IsExcluded[receiver] || (!routesInBlocks[sender] && !routesInBlocks[receiver]))
        {
            return;
        }

        if (sender == receiver)
        {
            if (IsInBlocks(source, sink) && problem.Blocks.Find(source, sink) is not { Size: 1 })
            {
                found.Add(sender);
            }

            return;
        }

        if (
            problem.NetworkFrom(sender, receiver) < 0
            && !Array.Exists(
                problem.TransmitBlocks,
                block => block.IsCarrier && block.Device == sender && problem.ReceiveBlocks[block.CarrierTo].Device == receiver
            )
        )
        {
            return;
        }

        if (
            routesInBlocks[sender]
            && sending.Add((sender, source))
            && Slots(sender, problem.TransmitBlockOf).Any(slot => IsInBlocks(source, slot) && problem.Blocks.Find(source, slot) is null)
        )
        {
            found.Add(sender);
        }

        if (
            routesInBlocks[receiver]
            && taking.Add(sink)
            && Slots(receiver, problem.ReceiveBlockOf).Any(slot => IsInBlocks(slot, sink) && problem.ReceiveSlotOf(sink) != slot)
        )
        {
            found.Add(receiver);
        }
    }

    private IEnumerable<int> Slots(int device, int[] blockOf) =>
        Enumerable.Range(problem.Show.Devices[device].FirstPoint, problem.Show.Devices[device].Type.PointCount).Where(point => blockOf[point] >= 0);

    private bool IsInBlocks(int source, int sink) =>
        graph.FixedSource(new PointIndex(sink)) is null
        && graph.RoutingBetween(new PointIndex(source), new PointIndex(sink)) is { Mode: RoutingMode.Block } entry
        && (graph.NumberOf(new PointIndex(source)) - 1) % (entry.BlockSize ?? 1) == (graph.NumberOf(new PointIndex(sink)) - 1) % (entry.BlockSize ?? 1);
}
