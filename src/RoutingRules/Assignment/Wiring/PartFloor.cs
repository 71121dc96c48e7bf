using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The blocks that the tasks of one part of a wiring need at least, however they are served.</summary>
internal static class PartFloor
{
    /// <summary>Counts sources at each end and how many fit a block; ends with a stream that stays, or a multicore, count nothing.</summary>
    /// <param name="tasks">The tasks.</param>
    /// <param name="blocksOf">For each device its transmit blocks.</param>
    /// <param name="receiveBlocksOf">For each device its receive blocks.</param>
    public static WiringCost Of(WiringTask[] tasks, TransmitBlock[][] blocksOf, ReceiveBlock[][] receiveBlocksOf)
    {
        var sent = new HashSet<(int Device, int Source)>();
        var taken = new HashSet<(int Device, int Source)>();
        foreach (var task in tasks)
        {
            foreach (var source in task.Block is null ? task.Sources : task.Wanted)
            {
                if (source >= 0)
                {
                    sent.Add((task.Sender, source));
                    taken.Add((task.Receiver, source));
                }
            }
        }

        var transmit = sent.GroupBy(item => item.Device)
            .Where(entry => !Array.Exists(blocksOf[entry.Key], block => block.IsKept || block.IsCarrier))
            .Sum(entry => Blocks(entry.Count(), blocksOf[entry.Key].Max(block => block.Width)));
        var receive = taken
            .GroupBy(item => item.Device)
            .Where(entry => !Array.Exists(receiveBlocksOf[entry.Key], block => block.IsKept || block.IsCarrier))
            .Sum(entry => Blocks(entry.Count(), receiveBlocksOf[entry.Key].Max(block => block.Width)));
        return new WiringCost(0, transmit, receive);
    }

    private static int Blocks(int sources, int width) => (sources + width - 1) / width;
}
