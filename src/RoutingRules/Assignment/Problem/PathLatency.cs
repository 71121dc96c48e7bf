using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>How late a signal arrives by a delivery, by what profiles and networks state; what they do not state counts nothing.</summary>
/// <remarks>
/// It is judged before any wiring is chosen, so that of several groups of slots a signal could travel in the slowest counts. What lies behind an output by
/// cables and paths through devices counts for feeds, as in the rule about latency.
/// </remarks>
internal sealed class PathLatency(AssignmentProblem problem)
{
    private const double Tolerance = 1e-9;

    private readonly SignalGraph graph = problem.Show.Graph;

    /// <summary>How late a demand may arrive at a run, in milliseconds; null when it may be as late as it likes. What ends in somebody's ears is in-ear whatever its role says.</summary>
    public static double? Most(AssignmentOptions options, ResolvedShow show, DemandNode node, int run) =>
        node.Feed?.Model.Role switch
        {
            _ when options.LatencyMilliseconds is null && options.InEarLatencyMilliseconds is null => null,
            { } role when role == FeedRole.InEar || EarDemands.IsHeard(show.Ears, new PointIndex(run), node.Width) => options.InEarLatencyMilliseconds
                ?? options.LatencyMilliseconds,
            { } role when role == FeedRole.Record || role == FeedRole.Broadcast => null,
            _ => options.LatencyMilliseconds,
        };

    /// <summary>False when a demand would arrive later than it may.</summary>
    public bool IsInTime(DemandNode node, Delivery delivery) =>
        Most(problem.Options, problem.Show, node, delivery.Sink) is not { } most || Of(node, delivery) <= most + Tolerance;

    private double Of(DemandNode node, Delivery delivery)
    {
        var latest = 0.0;
        for (var position = 0; position < delivery.Width; position++)
        {
            var sum = Before(delivery.Source + position) + Between(delivery, delivery.Sink + position);
            latest = Math.Max(latest, sum + (node.Feed is null ? 0 : Beyond(delivery.Sink + position)));
        }

        return latest;
    }

    /// <summary>From the real source to a point, the point included.</summary>
    private double Before(int point)
    {
        var sum = 0.0;
        var last = -1;
        foreach (var passed in graph.Upward(new PointIndex(point)))
        {
            sum += (last < 0 ? 0 : Hop(passed.Value, last)) + At(passed.Value);
            last = passed.Value;
        }

        return sum;
    }

    /// <summary>From behind the source of a delivery to its sink, the sink included.</summary>
    private double Between(Delivery delivery, int sink)
    {
        if (delivery.IsLocal)
        {
            return delivery.Source == delivery.Sink ? 0 : At(sink);
        }

        var slot = problem.ReceiveSlotOf(sink);
        var sum = problem.TransmitBlockOf[delivery.Source] >= 0 ? 0 : Slowest(delivery.Sender, PortKind.Transmit);
        sum += problem.NetworkFrom(delivery.Sender, delivery.Receiver) is >= 0 and var on
            ? PacketTime.UntilGivenOut(problem.Show.Document.Rig.Networks[on]) ?? 0
            : 0;
        sum += slot >= 0 ? At(slot) : Slowest(delivery.Receiver, PortKind.Receive);
        return slot == sink ? sum : sum + At(sink);
    }

    /// <summary>From behind a point to the last place it feeds by cables and paths through devices.</summary>
    private double Beyond(int start)
    {
        var latest = 0.0;
        var pending = new Stack<(int Point, double Sum)>([(start, 0)]);
        while (pending.TryPop(out var next))
        {
            latest = Math.Max(latest, next.Sum);
            foreach (var fed in graph.Fed(new PointIndex(next.Point)))
            {
                // What sits in a loop comes back to itself.
                if (graph.Hops[fed] is HopKind.Cable or HopKind.Through && fed != start)
                {
                    pending.Push((fed, next.Sum + Hop(next.Point, fed) + At(fed)));
                }
            }
        }

        return latest;
    }

    private double Slowest(int device, PortKind kind)
    {
        var node = problem.Show.Devices[device];
        var slowest = 0.0;
        foreach (var group in node.Groups)
        {
            slowest = group.Kind == kind ? Math.Max(slowest, Of(node.Profile, group)) : slowest;
        }

        return slowest;
    }

    private double At(int point) => Of(graph.DeviceOf(new PointIndex(point)).Profile, graph.GroupOf(new PointIndex(point)));

    private static double Of(DeviceProfile profile, GroupNode group) => SignalLatency.Stated(profile, group) is var stated && double.IsNaN(stated) ? 0 : stated;

    private double Hop(int from, int to) =>
        graph.Hops[to] switch
        {
            HopKind.Through => SignalLatency.Processing(
                graph.DeviceOf(new PointIndex(to)).Profile,
                graph.GroupOf(new PointIndex(from)).Id,
                graph.GroupOf(new PointIndex(to)).Id
            ) ?? 0,
            HopKind.Stream => problem.Show.Network.IndexOf(problem.Show.Streams[graph.ViaIndex(new PointIndex(to))].Model.Network) is >= 0 and var on
                ? PacketTime.UntilGivenOut(problem.Show.Document.Rig.Networks[on]) ?? 0
                : 0,
            _ => 0,
        };
}
