using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Turns deliveries into the decisions a wiring has to make.</summary>
/// <param name="problem">The problem.</param>
/// <param name="feedsBystanders">For each device whether receivers that no demand mentions listen to it.</param>
internal sealed class WiringTasks(AssignmentProblem problem, bool[] feedsBystanders)
{
    private readonly SortedDictionary<int, WiringTask> blocks = [];
    private readonly Dictionary<(int Receiver, int First, int Second, int SinkGroup, bool IsKept), List<WiringTask>> needs = [];
    private readonly List<WiringTask> needOrder = [];

    /// <summary>The tasks, receive blocks first, then what stays; null when two deliveries want different signals in one slot.</summary>
    public List<WiringTask>? Build(IReadOnlyList<WiringDemand> demands)
    {
        foreach (var demand in demands)
        {
            var delivery = demand.Delivery;
            if (delivery.IsLocal)
            {
                continue;
            }

            var slot = problem.ReceiveSlotOf(delivery.Sink);
            if (slot < 0)
            {
                AddNeed(delivery, demand.IsKept);
                continue;
            }

            WiringTask? firstTask = null;
            for (var position = 0; position < delivery.Width; position++)
            {
                slot = problem.ReceiveSlotOf(delivery.Sink + position);
                if (slot < 0 || AddWanted(slot, delivery.Source + position, delivery, demand.IsKept) is not { } task)
                {
                    return null;
                }

                if (firstTask is not null && firstTask != task)
                {
                    firstTask.SameStream.Add(task);
                    task.SameStream.Add(firstTask);
                }

                firstTask ??= task;
            }
        }

        // What stays has few ways that change nothing, so that the search is cut short.
        return [.. blocks.Values, .. needOrder.OrderBy(task => task.IsKept ? 0 : 1)];
    }

    private WiringTask? AddWanted(int slot, int source, Delivery delivery, bool isKept)
    {
        var block = problem.ReceiveBlocks[problem.ReceiveBlockOf[slot]];
        if (!blocks.TryGetValue(block.Id, out var task))
        {
            task = new WiringTask
            {
                Block = block,
                Wanted = new int[block.Width],
                Kept = new bool[block.Width],
                Sender = delivery.Sender,
                Receiver = delivery.Receiver,
            };
            Array.Fill(task.Wanted, -1);
            blocks.Add(block.Id, task);
        }

        ref var wanted = ref task.Wanted[slot - block.First];
        if (task.Sender != delivery.Sender || (wanted >= 0 && wanted != source))
        {
            return null;
        }

        wanted = source;
        task.Kept[slot - block.First] |= isKept;
        return task;
    }

    private void AddNeed(Delivery delivery, bool isKept)
    {
        // Where receivers that no demand mentions stay only while contents do, a new demand may do better beside what stays than with it.
        var isApart = isKept && feedsBystanders[delivery.Sender];
        var key = (delivery.Receiver, delivery.Source, delivery.Width == 2 ? delivery.Source + 1 : -1, problem.PortGroupOf[delivery.Sink], isApart);
        if (!needs.TryGetValue(key, out var alike))
        {
            needs.Add(key, alike = []);
        }

        // Each leg in use stays in use; what is new goes with the first.
        int[] feeders = isKept ? problem.Show.Graph.Upstreams.Slice(delivery.Sink, delivery.Width).ToArray() : [];
        var task = alike.Find(other => !isKept || !other.IsKept || other.Feeders.AsSpan().SequenceEqual(feeders));
        if (task is null)
        {
            task = new WiringTask
            {
                Sources = delivery.Width == 2 ? [delivery.Source, delivery.Source + 1] : [delivery.Source],
                PortGroups = PortGroups(delivery),
                Sender = delivery.Sender,
                Receiver = delivery.Receiver,
            };
            alike.Add(task);
            needOrder.Add(task);
        }

        task.Sinks.Add(delivery.Sink);
        if (isKept)
        {
            task.Staying.Add((delivery.Sink, feeders));
        }
    }

    private int[] PortGroups(Delivery delivery)
    {
        var groups = new List<int>();
        foreach (var block in problem.ReceiveBlocks)
        {
            if (
                block.Device == delivery.Receiver
                && !groups.Contains(block.PortGroup)
                && problem.Show.Graph.RoutingBetween(new(block.First), new(delivery.Sink)) is { Mode: RoutingMode.Free }
            )
            {
                groups.Add(block.PortGroup);
            }
        }

        return [.. groups];
    }
}
