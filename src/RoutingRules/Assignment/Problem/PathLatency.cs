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

    private readonly SignalLatency latency = new(problem.Show);

    /// <summary>
    /// How late a demand may arrive at a run, in milliseconds; null when it may be as late as it likes. What ends in somebody's ears is in-ear
    /// whatever its role says.
    /// </summary>
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
        var isPartial = false;
        var latest = 0.0;
        for (var position = 0; position < delivery.Width; position++)
        {
            var sum = latency.To(new PointIndex(delivery.Source + position), ref isPartial) + Between(delivery, delivery.Sink + position);
            latest = Math.Max(
                latest,
                sum + (node.Feed is null ? 0 : latency.Beyond(new PointIndex(delivery.Sink + position), ref isPartial, out _, isByWire: true))
            );
        }

        return latest;
    }

    /// <summary>From behind the source of a delivery to its sink, the sink included.</summary>
    private double Between(Delivery delivery, int sink)
    {
        if (delivery.IsLocal)
        {
            return delivery.Source == delivery.Sink ? 0 : At(sink);
        }

        var slot = problem.ReceiveSlotOf(sink);
        var sum = problem.TransmitBlockOf[delivery.Source] >= 0 ? 0 : latency.Slowest(problem.Show.Devices[delivery.Sender], PortKind.Transmit);
        sum += problem.NetworkFrom(delivery.Sender, delivery.Receiver) is >= 0 and var on
            ? PacketTime.UntilGivenOut(problem.Show.Document.Rig.Networks[on]) ?? 0
            : 0;
        sum += slot >= 0 ? At(slot) : latency.Slowest(problem.Show.Devices[delivery.Receiver], PortKind.Receive);
        return slot == sink ? sum : sum + At(sink);
    }

    private double At(int point)
    {
        var isPartial = false;
        return latency.At(new PointIndex(point), ref isPartial);
    }
}
