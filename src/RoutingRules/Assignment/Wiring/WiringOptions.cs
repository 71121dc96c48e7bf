using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What may be chosen for a task.</summary>
internal sealed class WiringOptions(AssignmentProblem problem, WiringState state, WiringTables tables, WiringRelevance relevance, WiringSlots slots)
{
    /// <summary>Every way to serve a task that is worth trying.</summary>
    public List<Choice> Of(WiringTask task) => task.Block is null ? NeedOptions(task) : BlockOptions(task);

    private List<Choice> BlockOptions(WiringTask task)
    {
        var block = task.Block!;
        var options = new List<Choice>();
        var fresh = new HashSet<int>();
        foreach (var from in tables.BlocksOf[task.Sender])
        {
            if (block.IsCarrier ? from.CarrierTo != block.Id : from.IsCarrier || from.Width % block.Width != 0 || !IsWorthTrying(from, fresh))
            {
                continue;
            }

            for (var at = from.First; at + block.Width <= from.First + from.Width; at += block.Width)
            {
                var familiar = 0;
                for (var position = 0; position < block.Width; position++)
                {
                    familiar += task.Wanted[position] >= 0 && state.Slots.InputContent(at + position) == task.Wanted[position] ? 1 : 0;
                }

                familiar += block.InputStart == at ? 1 : 0;
                options.Add(
                    new Choice
                    {
                        From = from,
                        Blocks = [block],
                        Starts = [at],
                        Familiar = familiar,
                        Rank = options.Count,
                    }
                );
            }
        }

        return options;
    }

    /// <summary>Unused blocks of one group that nothing of the input speaks for are alike: only the first is tried.</summary>
    private bool IsWorthTrying(TransmitBlock block, HashSet<int> fresh) =>
        state.IsUsed(block.Id) || relevance.IsRelevant[block.Id] || fresh.Add(problem.PortGroupOf[block.First]);

    private List<Choice> NeedOptions(WiringTask task)
    {
        var options = new List<Choice>();
        foreach (var portGroup in task.PortGroups)
        {
            var receivers = Array.FindAll(tables.ReceiveBlocksOf[task.Receiver], block => block.PortGroup == portGroup);
            var fresh = new HashSet<int>();
            foreach (var from in tables.BlocksOf[task.Sender])
            {
                var width = receivers[0].Width;
                if (receivers[0].IsCarrier ? from.CarrierTo != receivers[0].Id : from.IsCarrier || from.Width % width != 0 || !IsWorthTrying(from, fresh))
                {
                    continue;
                }

                AddNeedOptions(task, from, receivers, options);
            }
        }

        return options;
    }

    private void AddNeedOptions(WiringTask task, TransmitBlock from, ReceiveBlock[] receivers, List<Choice> options)
    {
        var width = receivers[0].Width;
        foreach (var first in slots.For(task, 0, from, -1))
        {
            if (task.Sources.Length == 1)
            {
                Add([first]);
                continue;
            }

            foreach (var second in slots.For(task, 1, from, first))
            {
                Add([first, second]);
            }
        }

        void Add(int[] chosen)
        {
            var starts = new List<int>();
            foreach (var slot in chosen)
            {
                var start = from.First + ((slot - from.First) / width * width);
                if (!starts.Contains(start))
                {
                    starts.Add(start);
                }
            }

            var familiar = 0;
            for (var i = 0; i < chosen.Length; i++)
            {
                familiar += state.Slots.InputContent(chosen[i]) == task.Sources[i] ? 1 : 0;
            }

            foreach (var first in Takers(task, starts[0], receivers, null))
            {
                if (starts.Count == 1)
                {
                    Offer(chosen, [first], [starts[0]], null, familiar);
                    continue;
                }

                foreach (var second in Takers(task, starts[1], receivers, first))
                {
                    Offer(chosen, [first, second], [.. starts], null, familiar);
                }
            }

            if (starts.Count == 1 && UsualPair(task, starts[0], receivers) is { } pair)
            {
                Offer(chosen, pair, [starts[0], starts[0]], pair, familiar);
            }
        }

        void Offer(int[] chosen, ReceiveBlock[] blocks, int[] starts, ReceiveBlock[]? bySide, int familiar)
        {
            var choice = new Choice
            {
                From = from,
                Blocks = blocks,
                Starts = starts,
                Slots = chosen,
                BySide = bySide,
                Rank = options.Count,
            };
            for (var i = 0; i < chosen.Length; i++)
            {
                familiar += state.Slots.InputContent(task.Sinks[0] + i) == choice.ReceiveSlotOf(i) ? 1 : 0;
            }

            choice.Familiar = familiar + blocks.Where((block, i) => block.InputStart == starts[i]).Count();
            options.Add(choice);
        }
    }

    /// <summary>
    /// The receive block that takes a run of chosen already, and the one by which the need's sinks hang in the input if it may; else the one that did
    /// in the input; else a free one that fed nothing in the input, and each one that did where demands stay, or that feeds outputs by itself.
    /// </summary>
    private List<ReceiveBlock> Takers(WiringTask task, int start, ReceiveBlock[] receivers, ReceiveBlock? taken)
    {
        var takers = new List<ReceiveBlock>();
        if (Array.Find(receivers, block => state.StartOf(block.Id) == start) is { } taking)
        {
            var usual = Array.FindAll(receivers, block => Feeds(block, task) && block != taking && taken != block && MayTake(block, start));
            return [.. usual, taking];
        }

        ReceiveBlock? fresh = null;
        foreach (var block in receivers)
        {
            if (!relevance.IsFree(block) || taken == block)
            {
                continue;
            }

            if (block.InputStart == start)
            {
                takers.Insert(0, block);
            }
            else if ((block.InputStart < 0 || !relevance.HasKept[block.Device]) && !tables.FeedsOutputs[block.Id] && !Feeds(block, task))
            {
                fresh ??= block;
            }
            else
            {
                takers.Add(block);
            }
        }

        if (fresh is not null)
        {
            takers.Insert(takers.Count > 0 && takers[0].InputStart == start ? 1 : 0, fresh);
        }

        return takers;
    }

    /// <summary>The two blocks that bring the sides of a pair that stays in the input, if both may take a run of slots; null when they are one.</summary>
    private ReceiveBlock[]? UsualPair(WiringTask task, int start, ReceiveBlock[] receivers)
    {
        ReceiveBlock?[] pair = Array.ConvertAll(
            task.Feeders,
            feeder => Array.Find(receivers, block => feeder >= block.First && feeder < block.First + block.Width && MayTake(block, start))
        );
        return pair is [{ } first, { } second] && first != second ? [first, second] : null;
    }

    private bool MayTake(ReceiveBlock block, int start) => state.StartOf(block.Id) == start || relevance.IsFree(block);

    /// <summary>True when sinks of a need that stay hang on a block in the input.</summary>
    private static bool Feeds(ReceiveBlock block, WiringTask task) =>
        Array.Exists(task.Feeders, feeder => feeder >= block.First && feeder < block.First + block.Width);
}
