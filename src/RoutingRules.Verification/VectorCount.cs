using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Counts the 14 numbers.</summary>
internal static class VectorCount
{
    /// <summary>The numbers of a result.</summary>
    /// <param name="facts">The input.</param>
    /// <param name="at">For each demand its run, null when it has none.</param>
    /// <param name="failed">For each demand how many of its deliveries are not made.</param>
    /// <param name="after">The result patch.</param>
    /// <param name="deliveries">The deliveries it makes.</param>
    public static ObjectiveVector Of(
        AssignmentFacts facts,
        IReadOnlyList<PointRange?> at,
        IReadOnlyList<int> failed,
        PatchTrace after,
        IReadOnlyList<TracedDelivery> deliveries
    )
    {
        var numbers = Placements(facts, at, failed);
        numbers[10] = Rewritten(facts, at, after, deliveries);
        (numbers[11], numbers[12]) = Blocks(facts, after);
        return new ObjectiveVector { Values = ValueList.Create<int>(numbers) };
    }

    /// <summary>The numbers that placements alone decide; the three about slots and blocks are 0.</summary>
    public static int[] Placements(AssignmentFacts facts, IReadOnlyList<PointRange?> at, IReadOnlyList<int> failed)
    {
        var numbers = new int[ObjectiveVector.Length];
        foreach (var demand in facts.Demands)
        {
            numbers[(int)demand.Priority] += failed[demand.Index];
            if (demand.Existing is { } existing && at[demand.Index] != existing)
                numbers[demand.IsHeld ? 4 : 5]++;

            if (at[demand.Index] is { } run)
            {
                numbers[8] += demand.Preferred is { } preferred ? Math.Abs(run.First - preferred) : 0;
                numbers[13] += run.First;
            }
        }

        CountSets(facts, at, numbers);
        numbers[7] = Groups(facts, at);
        numbers[9] = Inversions(facts, at);
        return numbers;
    }

    private static void CountSets(AssignmentFacts facts, IReadOnlyList<PointRange?> at, int[] numbers)
    {
        foreach (var set in facts.Demands.Where(demand => demand.Feed?.Set is not null).GroupBy(demand => (demand.Feed!.Set, demand.Entry)))
        {
            var members = set.ToList();
            for (var i = 0; i < members.Count; i++)
            {
                for (var j = i + 1; j < members.Count; j++)
                {
                    if (members[i].Feed!.Part == members[j].Feed!.Part || at[members[i].Index] is not { } left || at[members[j].Index] is not { } right)
                        continue;

                    if (left.Device != right.Device && left.First != right.First)
                    {
                        numbers[6]++;
                        numbers[8] += Math.Abs(left.First - right.First);
                    }
                }
            }
        }
    }

    private static int Groups(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        var split = 0;
        foreach (var group in facts.Demands.GroupBy(demand => (demand.Line is null, Name: demand.Line?.Group ?? demand.Feed?.Group)))
        {
            if (group.Key.Name is not null)
                split += Math.Max(0, group.Select(demand => at[demand.Index]?.Device).OfType<Id<Device>>().Distinct().Count() - 1);
        }

        return split;
    }

    private static int Inversions(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        var count = 0;
        var earlier = new Dictionary<(Id<Device>, Id<PortGroup>), List<int>>();
        foreach (var demand in facts.Demands)
        {
            if (at[demand.Index] is not { } run)
                continue;

            if (!earlier.TryGetValue((run.Device, run.Group), out var numbers))
                earlier.Add((run.Device, run.Group), numbers = []);

            count += numbers.Count(number => number > run.First);
            numbers.Add(run.First);
        }

        return count;
    }

    private static int Rewritten(AssignmentFacts facts, IReadOnlyList<PointRange?> at, PatchTrace after, IReadOnlyList<TracedDelivery> deliveries)
    {
        var points = new HashSet<Point>();
        var blocks = new HashSet<Point>();
        foreach (var delivery in deliveries)
        {
            if (delivery.Demand.Existing is not { } existing || at[delivery.Demand.Index] != existing)
                continue;

            points.UnionWith(delivery.Transmit.Where(slot => facts.Before.Source(slot) != after.Source(slot)));

            // A receive slot takes what its block takes.
            points.UnionWith(
                Enumerable
                    .Range(0, delivery.Sinks.Width)
                    .Select(i => delivery.Sinks[i])
                    .Where(sink => facts.Rig.Kind(sink) != PortKind.Receive && facts.Before.Upstream(sink)?.From != after.Upstream(sink)?.From)
            );
            foreach (var slot in delivery.Receive)
            {
                var block = Block(facts.Rig, slot);
                if (block.Any(point => facts.Before.Listens(point)?.From != after.Listens(point)?.From))
                    blocks.Add(block[0]);
            }
        }

        return points.Count + blocks.Count;
    }

    private static (int Transmit, int Receive) Blocks(AssignmentFacts facts, PatchTrace after)
    {
        var rig = facts.Rig;
        var transmit = new HashSet<Point>();
        var receive = new HashSet<Point>();
        foreach (var (at, from) in after.Listening())
        {
            if (rig.IsExcluded(at) || rig.IsExcluded(from))
                continue;

            // Else thrift would throw out whoever listens in a stream that demands share.
            if (facts.IsMentioned(at.Device) || facts.IsStaying(after.Patch.Streams[after.Listens(at)!.Value.Stream]))
                receive.Add(FirstOfBlock(rig, at));

            transmit.Add(FirstOfBlock(rig, from));
        }

        return (transmit.Count, receive.Count);
    }

    /// <summary>The first slot of the block a slot lies in.</summary>
    public static Point FirstOfBlock(RigFacts rig, Point slot)
    {
        var group = rig.Group(slot)!;
        return group.At((group.BlockOf(slot.Number) * group.BlockSize) + 1);
    }

    /// <summary>The slots of the block a slot lies in.</summary>
    public static List<Point> Block(RigFacts rig, Point slot)
    {
        var group = rig.Group(slot)!;
        var first = FirstOfBlock(rig, slot).Number;
        return Enumerable.Range(first, Math.Min(group.BlockSize, group.Count - first + 1)).Select(group.At).ToList();
    }
}
