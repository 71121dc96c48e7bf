using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Assignment.Wiring;

/// <content>What may be chosen for a task, and which tasks belong together.</content>
internal sealed partial class WiringSolver
{
    private List<Choice> BlockOptions(WiringTask task)
    {
        var block = task.Block!;
        var options = new List<Choice>();
        var fresh = new HashSet<int>();
        foreach (var from in blocksOf[task.Sender])
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
                    familiar += task.Wanted[position] >= 0 && state.InputContent(at + position) == task.Wanted[position] ? 1 : 0;
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
        state.IsUsed(block.Id) || isRelevant[block.Id] || fresh.Add(problem.PortGroupOf[block.First]);

    private List<Choice> NeedOptions(WiringTask task)
    {
        var options = new List<Choice>();
        foreach (var portGroup in task.PortGroups)
        {
            var receivers = Array.FindAll(receiveBlocksOf[task.Receiver], block => block.PortGroup == portGroup);
            var fresh = new HashSet<int>();
            foreach (var from in blocksOf[task.Sender])
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
        foreach (var first in SlotsFor(task, 0, from, -1))
        {
            if (task.Sources.Length == 1)
            {
                Add([first]);
                continue;
            }

            foreach (var second in SlotsFor(task, 1, from, first))
            {
                Add([first, second]);
            }
        }

        void Add(int[] slots)
        {
            var starts = new List<int>();
            foreach (var slot in slots)
            {
                var start = from.First + ((slot - from.First) / width * width);
                if (!starts.Contains(start))
                {
                    starts.Add(start);
                }
            }

            var familiar = 0;
            for (var i = 0; i < slots.Length; i++)
            {
                familiar += state.InputContent(slots[i]) == task.Sources[i] ? 1 : 0;
            }

            foreach (var first in Takers(task, starts[0], receivers, null))
            {
                if (starts.Count == 1)
                {
                    Offer(slots, [first], [starts[0]], null, familiar);
                    continue;
                }

                foreach (var second in Takers(task, starts[1], receivers, first))
                {
                    Offer(slots, [first, second], [.. starts], null, familiar);
                }
            }

            if (starts.Count == 1 && UsualPair(task, starts[0], receivers) is { } pair)
            {
                Offer(slots, pair, [starts[0], starts[0]], pair, familiar);
            }
        }

        void Offer(int[] slots, ReceiveBlock[] blocks, int[] starts, ReceiveBlock[]? bySide, int familiar)
        {
            var choice = new Choice
            {
                From = from,
                Blocks = blocks,
                Starts = starts,
                Slots = slots,
                BySide = bySide,
                Rank = options.Count,
            };
            for (var i = 0; i < slots.Length; i++)
            {
                familiar += state.InputContent(task.Sinks[0] + i) == choice.ReceiveSlotOf(i) ? 1 : 0;
            }

            choice.Familiar = familiar + blocks.Where((block, i) => block.InputStart == starts[i]).Count();
            options.Add(choice);
        }
    }

    /// <summary>
    /// The receive block that takes a run of slots already, and the one by which the need's sinks hang in the input if it may; else the one that did
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
            if (!IsFree(block) || taken == block)
            {
                continue;
            }

            if (block.InputStart == start)
            {
                takers.Insert(0, block);
            }
            else if ((block.InputStart < 0 || !hasKept[block.Device]) && !feedsOutputs[block.Id])
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

    private bool MayTake(ReceiveBlock block, int start) => state.StartOf(block.Id) == start || IsFree(block);

    private bool IsFree(ReceiveBlock block) => state.StartOf(block.Id) == -1 && !isTasked[block.Id];

    /// <summary>True when sinks of a need that stay hang on a block in the input.</summary>
    private static bool Feeds(ReceiveBlock block, WiringTask task) =>
        Array.Exists(task.Feeders, feeder => feeder >= block.First && feeder < block.First + block.Width);

    /// <summary>
    /// In each run that receive blocks could take, or narrower ones of another receiver: the slots that carry the source, else a free slot of each
    /// worth: one that carried it in the input, one that takes nothing from a demand that stays, one for each source
    /// of demands that stay. Every free slot counts with bystanders, and each
    /// one that would sound at an output by itself.
    /// </summary>
    private List<int> Slots(TransmitBlock from, int source, int taken)
    {
        var slots = new List<int>();
        var width = runWidth[from.Device];
        Span<int> byWorth = stackalloc int[3];
        for (var start = from.First; start < from.First + from.Width; start += width)
        {
            byWorth.Fill(-1);
            var (carries, sounds) = (false, false);
            for (var slot = start; slot < start + width; slot++)
            {
                if (slot == taken)
                {
                    continue;
                }

                if (state.ContentOf(slot) == source || slot == source)
                {
                    // Of several that carry it, one may arrive at a dead slot, or be what a demand that stays hangs on.
                    if (!problem.IsBarred[slot])
                    {
                        slots.Add(slot);
                        carries = true;
                        sounds |= soundsByItself[slot];
                    }
                }
                else if (state.IsOpenTo(slot, source))
                {
                    // It makes a difference on which of several slots with its source a demand that stays hangs.
                    var worth =
                        state.InputContent(slot) == source ? 0
                        : keptSources.Contains(state.InputContent(slot)) ? 2
                        : 1;
                    if (
                        soundsByItself[slot]
                        || standing.Contains(slot)
                        || (worth == 2 && byWorth[2] >= 0 && state.InputContent(slot) != state.InputContent(byWorth[2]))
                    )
                    {
                        slots.Add(slot);
                    }
                    else if (byWorth[worth] < 0)
                    {
                        byWorth[worth] = slot;
                    }
                    else if (from.Bystanders.Count > 0 && !carries)
                    {
                        slots.Add(slot);
                    }
                }
            }

            if (carries && from.Bystanders.Count == 0 && !sounds)
            {
                // A demand that stays may keep the slot it had although the source travels in another one too.
                if (byWorth[0] >= 0 && keptSources.Contains(source))
                {
                    slots.Add(byWorth[0]);
                }

                continue;
            }

            foreach (var slot in byWorth)
            {
                if (slot >= 0)
                {
                    slots.Add(slot);
                }
            }
        }

        return slots;
    }

    /// <summary>Marks the slots that sound at an output without any route, or may meet a dead or reserved slot, when a block that serves a free need takes them.</summary>
    private void MarkSounding(WiringTask task)
    {
        foreach (var block in receiveBlocksOf[task.Receiver])
        {
            if (!feedsOutputs[block.Id] || !task.PortGroups.Contains(block.PortGroup))
            {
                continue;
            }

            var hasBarred = HasBarred(block.First, block.Width);

            foreach (var from in blocksOf[task.Sender])
            {
                for (var slot = from.First; slot < from.First + from.Width; slot++)
                {
                    var position = (slot - from.First) % block.Width;
                    soundsByItself[slot] |= hasBarred || problem.FixedOutputsOf[block.First + position].Length > 0 || IsExposed(block, position);
                }
            }
        }
    }

    /// <summary>True for a block of which some slot takes only certain sources, so that no other block can stand in for it.</summary>
    private bool IsParticular(TransmitBlock block)
    {
        if (HasBarred(block.First, block.Width))
        {
            return true;
        }

        var graph = problem.Show.Graph;
        var group = graph.GroupOf(new(block.First));
        foreach (var entry in problem.Show.Devices[block.Device].Profile.Routing)
        {
            if (entry.Mode == RoutingMode.Block && entry.To == group.Id)
            {
                return true;
            }
        }

        for (var slot = block.First; slot < block.First + block.Width; slot++)
        {
            if (graph.FixedSource(new(slot)) is not null)
            {
                return true;
            }
        }

        return false;
    }

    private bool HasBarred(int first, int width) => problem.IsBarred.AsSpan(first, width).Contains(true);

    /// <summary>Blocks whose contents or receivers in the input matter to this wiring.</summary>
    private void FindRelevant(List<WiringTask> all)
    {
        var sources = keptSources;
        sources.Clear();
        standing.Clear();
        Array.Clear(isTasked);
        Array.Clear(hasKept);
        Array.Clear(soundsByItself);
        Array.Clear(runWidth);
        foreach (var task in all)
        {
            if (task.Block is null && hasFedOutputs[task.Receiver])
            {
                MarkSounding(task);
            }

            if (task.Block is { } block)
            {
                isTasked[block.Id] = true;
            }

            // Where something private travels, it matters which slots arrive where.
            if (problem.Exposure.IsAny && (Array.Exists(task.Sources, problem.Exposure.IsPrivate) || Array.Exists(task.Wanted, problem.Exposure.IsPrivate)))
            {
                foreach (var from in blocksOf[task.Sender])
                {
                    soundsByItself.AsSpan(from.First, from.Width).Fill(true);
                }
            }

            foreach (var receiver in task.Block is null ? receiveBlocksOf[task.Receiver] : [])
            {
                runWidth[task.Sender] = task.PortGroups.Contains(receiver.PortGroup)
                    ? CommonWidth(runWidth[task.Sender], receiver.Width)
                    : runWidth[task.Sender];
            }

            for (var position = 0; position < task.Wanted.Length; position++)
            {
                if (task.Kept[position])
                {
                    sources.Add(task.Wanted[position]);
                    standing.Add(task.Block!.InputStart < 0 ? -1 : task.Block.InputStart + position);
                }
            }

            foreach (var feeder in task.Feeders)
            {
                standing.Add(SentTo(feeder));
            }

            sources.UnionWith(task.IsKept ? task.Sources : []);
            hasKept[task.Receiver] |= task.IsKept;
        }

        foreach (var transmit in problem.TransmitBlocks)
        {
            var relevant = transmit.Bystanders.Count > 0 || transmit.IsKept || isParticular[transmit.Id];
            for (var slot = transmit.First; slot < transmit.First + transmit.Width; slot++)
            {
                relevant |= sources.Contains(state.InputContent(slot)) || (state.ContentOf(slot) != WiringState.Undecided && !transmit.IsKept);
            }

            isRelevant[transmit.Id] = relevant;
        }
    }

    /// <summary>The transmit slot that a receive slot takes in the input; -1 for none.</summary>
    private int SentTo(int receive) =>
        receive >= 0 && problem.ReceiveBlockOf[receive] is >= 0 and var id && problem.ReceiveBlocks[id] is { InputStart: >= 0 } block
            ? block.InputStart + receive - block.First
            : -1;

    /// <summary>The widest run that two widths are whole multiples of; 0 stands for any width.</summary>
    private static int CommonWidth(int one, int other)
    {
        while (other != 0)
        {
            (one, other) = (other, one % other);
        }

        return one;
    }

    /// <summary>Parts that share no sender, no receiver that might run short of streams or blocks, and no link that might fill up; receive blocks before free needs.</summary>
    private List<WiringTask[]> Parts(List<WiringTask> all)
    {
        var devices = problem.DeviceCount;
        var sets = new DisjointSets(devices * 2);
        var isTight = TightReceivers(all);
        foreach (var task in all)
        {
            if (isTight[task.Receiver])
            {
                sets.Join(task.Sender, devices + task.Receiver);
            }
        }

        JoinByLinks(all, sets);
        var byRoot = new List<WiringTask>?[devices * 2];
        var parts = new List<List<WiringTask>>();
        foreach (var task in all)
        {
            ref var part = ref byRoot[sets.Find(task.Sender)];
            if (part is null)
            {
                part = [];
                parts.Add(part);
            }

            part.Add(task);
        }

        return parts.ConvertAll(part => part.ToArray());
    }

    /// <summary>Receivers whose senders, each taken at its most, could together exceed the limit of streams or the number of blocks.</summary>
    private bool[] TightReceivers(List<WiringTask> all)
    {
        var devices = problem.DeviceCount;
        var wanted = new int[devices * devices];
        var hasNeed = new bool[devices];
        foreach (var task in all)
        {
            hasNeed[task.Receiver] |= task.Block is null;
            wanted[(task.Receiver * devices) + task.Sender] += Math.Max(task.Sources.Length, 1);
        }

        var isTight = new bool[devices];
        for (var receiver = 0; receiver < devices; receiver++)
        {
            long streams = 0;
            long blocks = 0;
            for (var sender = 0; sender < devices; sender++)
            {
                var count = wanted[(receiver * devices) + sender];
                if (count > 0)
                {
                    streams += Math.Min(count, blocksOf[sender].Length);
                    blocks += Math.Min(count, RunsOf(sender, receiver));
                }
            }

            // Where demands stay, a block that fed one in the input is not as good as any other; nor is one that sounds at outputs by itself.
            isTight[receiver] =
                streams > 0
                && (
                    (hasNeed[receiver] && hasFedOutputs[receiver])
                    || streams + keptStreams[receiver] > problem.ReceivedLimit[receiver]
                    || blocks > freeBlocks[receiver]
                    || hasKept[receiver]
                );
        }

        return isTight;
    }

    /// <summary>How many runs of slots of a sender a receiver's narrowest block could take.</summary>
    private int RunsOf(int sender, int receiver)
    {
        var narrowest = int.MaxValue;
        foreach (var block in receiveBlocksOf[receiver])
        {
            narrowest = Math.Min(narrowest, block.Width);
        }

        var runs = 0;
        foreach (var block in blocksOf[sender])
        {
            runs += Math.Max(1, block.Width / narrowest);
        }

        return runs;
    }
}
