using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What a part of a wiring has to achieve, as numbers; equal keys have equal best options.</summary>
internal readonly struct WiringKey : IEquatable<WiringKey>
{
    private readonly int[] numbers;
    private readonly int hash;

    /// <summary>Describes the tasks of a part.</summary>
    /// <param name="tasks">The tasks.</param>
    /// <param name="isTasked">For each receive block whether its contents are prescribed.</param>
    /// <param name="blocksOf">For each device its receive blocks.</param>
    /// <param name="feedsBystanders">For each device whether receivers that no demand mentions listen to it.</param>
    /// <param name="outputsOf">For each receive slot the outputs that it feeds by itself.</param>
    /// <param name="placed">For each point what is placed there; below 0 for nothing.</param>
    /// <param name="budget">The budget of the search.</param>
    public WiringKey(WiringTask[] tasks, bool[] isTasked, ReceiveBlock[][] blocksOf, bool[] feedsBystanders, int[][] outputsOf, int[] placed, long budget)
    {
        var list = new List<int>(tasks.Length * 6) { (int)Math.Min(budget, int.MaxValue) };
        foreach (var task in tasks)
        {
            if (task.Block is { } block)
            {
                list.Add(block.Id);
                for (var position = 0; position < task.Wanted.Length; position++)
                {
                    list.Add(task.Kept[position] ? -2 - task.Wanted[position] : task.Wanted[position]);

                    // Where a slot feeds several outputs, what it carries does not tell which of them may sound.
                    var outputs = outputsOf[block.First + position];
                    list.AddRange(outputs.Length > 1 ? outputs.Where(output => placed[output] >= 0) : []);
                }

                list.Add(int.MinValue);
                list.AddRange(task.SameStream.Select(other => -other.Block!.Id - 1));
            }
            else
            {
                list.Add(-task.Receiver - 1);
                list.AddRange(task.Sources);
                list.AddRange(task.PortGroups);
                list.Add(-1 - task.Staying.Count);
                list.AddRange(task.Feeders);
                if (feedsBystanders[task.Sender])
                {
                    list.Add(task.Sinks.Count);
                }

                foreach (var other in blocksOf[task.Receiver])
                {
                    if (isTasked[other.Id])
                    {
                        list.Add(other.Id);
                    }
                }
            }
        }

        numbers = [.. list];
        var code = new HashCode();
        foreach (var number in numbers)
        {
            code.Add(number);
        }

        hash = code.ToHashCode();
    }

    public bool Equals(WiringKey other) => hash == other.hash && numbers.AsSpan().SequenceEqual(other.numbers);

    public override bool Equals(object? obj) => obj is WiringKey other && Equals(other);

    public override int GetHashCode() => hash;
}
