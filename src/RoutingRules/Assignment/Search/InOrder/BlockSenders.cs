using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Which device feeds each receive block that demands that stand need by their place alone.</summary>
internal sealed class BlockSenders(AssignmentProblem problem)
{
    private readonly Dictionary<int, int> senderOf = [];

    /// <summary>The device that feeds the receive blocks a feed needs by its place alone; -1 for lines and freely routed outputs.</summary>
    public int Of(Demand demand, Candidate candidate) =>
        demand.Node.Line is null
        && candidate.Deliveries.Length == 1
        && candidate.Deliveries[0] is { IsLocal: false } delivery
        && problem.FixedBlockOf(delivery.Sink) >= 0
            ? delivery.Sender
            : -1;

    /// <summary>True when a block that a place needs is fed by another device already.</summary>
    public bool IsFedByAnother(Demand demand, Candidate candidate)
    {
        var sender = Of(demand, candidate);
        for (var position = 0; sender >= 0 && position < demand.Node.Width; position++)
        {
            if (senderOf.TryGetValue(problem.FixedBlockOf(candidate.Deliveries[0].Sink + position), out var other) && other != sender)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Notes who feeds the blocks of a demand that stands.</summary>
    public void Note(Demand demand, Candidate candidate)
    {
        for (var position = 0; Of(demand, candidate) >= 0 && position < demand.Node.Width; position++)
        {
            senderOf[problem.FixedBlockOf(candidate.Deliveries[0].Sink + position)] = candidate.Deliveries[0].Sender;
        }
    }
}
