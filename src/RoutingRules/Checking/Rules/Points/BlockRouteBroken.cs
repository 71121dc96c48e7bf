using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports routes between groups that a device moves in blocks, where a block is split, shifted, doubled, shared or reordered.</summary>
/// <remarks>
/// The patch is judged as it stands, factory routes included. Where blocks are broken, order is not judged.
/// Two whole blocks that change places inside one sink group are a reordering; a block that goes whole to two groups is a fault.
/// </remarks>
public sealed class BlockRouteBroken : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2006",
            Name = "block-route-broken",
            Title = "Block of channels torn apart",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks =
                "Where a device moves channels in blocks, each block is routed whole, once and to one port group, starting on the grid; "
                + "where it cannot reorder, all channels between two groups keep one distance.",
            Why = "The device can set such routes for whole blocks only. Patching the one channel that was meant moves its neighbours too.",
            Remedy = "Route whole blocks, starting at channel 1, 1 + block size and so on, in their own order.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, Re-ordering, Channel Block Sizes and Combining Input Constraints",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        List<BlockUse>? uses = null;
        foreach (var entry in subject.Profile.Routing)
        {
            if (entry.Mode == RoutingMode.Block && context.ProfileProblems(subject).IsEmpty)
            {
                (uses ??= []).Add(BlockUse.Of(context, subject, entry));
            }
        }

        context.LookedAt(uses?.Count ?? 0);
        for (var i = 0; uses is not null && i < uses.Count; i++)
        {
            if (!CheckBlocks(context, subject, uses[i]))
            {
                CheckOrder(context, subject, uses[i]);
            }

            for (var other = 0; other < i; other++)
            {
                CheckShared(context, subject, uses[other], uses[i]);
            }
        }
    }

    /// <summary>Reports runs of blocks that are not taken whole; false when there is none.</summary>
    private static bool CheckBlocks(RuleContext context, DeviceNode device, BlockUse use)
    {
        var found = false;
        for (var block = 0; use.BlockSize > 1 && block < use.BlockCount; block++)
        {
            var first = block;
            while (block < use.BlockCount && use.Taken(block) > 0 && !use.IsWhole(block))
            {
                block++;
            }

            if (block > first)
            {
                found = true;
                ReportBlocks(context, device, use, first, block - first);
            }
        }

        return found;
    }

    private static void ReportBlocks(RuleContext context, DeviceNode device, BlockUse use, int first, int blocks)
    {
        var at = Channels(device, use, first * use.BlockSize, (first + blocks) * use.BlockSize);
        var missing = new List<string>();
        var doubled = new List<string>();
        for (var channel = at.First - 1; channel < at.Last; channel++)
        {
            if (use.Times(channel) != 1)
            {
                (use.Times(channel) == 0 ? missing : doubled).Add((channel + 1).ToString(CultureInfo.InvariantCulture));
            }
        }

        var what =
            use.IsMisaligned(first, blocks) ? "but the run starts between two blocks"
            : doubled.Count == 0 ? $"but {Wording.Names(missing, false)} {(missing.Count == 1 ? "is" : "are")} missing"
            : missing.Count == 0 ? $"but {Wording.Names(doubled, false)} {(doubled.Count == 1 ? "is" : "are")} taken more than once"
            : $"but {Wording.Names(missing, false)} {(missing.Count == 1 ? "is" : "are")} missing and {Wording.Names(doubled, false)} taken more than once";
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"'{use.To.Id}' of '{device.DisplayName}' takes channels of {at} in blocks of {use.BlockSize}, {what}."
            ),
            Pointer(context, device, use, pair => pair.Channel >= at.First - 1 && pair.Channel < at.Last),
            Entity.Of("block", at),
            Entity.Of("to", $"{device.Id}/{use.To.Id}")
        );
    }

    private static void CheckOrder(RuleContext context, DeviceNode device, BlockUse use)
    {
        if (use.Entry.Reordering || use.Pairs.Count == 0)
        {
            return;
        }

        var counts = new Dictionary<int, int>();
        var usual = use.Pairs[0].Sink - use.Pairs[0].Channel;
        foreach (var (channel, sink) in use.Pairs)
        {
            counts[sink - channel] = counts.GetValueOrDefault(sink - channel) + 1;
        }

        foreach (var (channel, sink) in use.Pairs)
        {
            usual = counts[sink - channel] > counts[usual] ? sink - channel : usual;
        }

        var others = use.Pairs.FindAll(pair => pair.Sink - pair.Channel != usual);
        if (others.Count == 0)
        {
            return;
        }

        var names = others.ConvertAll(pair => string.Create(CultureInfo.InvariantCulture, $"{use.From.Id}/{pair.Channel + 1} at {use.To.Id}/{pair.Sink + 1}"));
        context.Report(
            $"'{device.DisplayName}' cannot change the order of channels between '{use.From.Id}' and '{use.To.Id}', but these are out of order: "
                + $"{Wording.Names(names, false)}.",
            Pointer(context, device, use, pair => pair.Sink - pair.Channel != usual),
            Entity.Of("from", $"{device.Id}/{use.From.Id}"),
            Entity.Of("to", $"{device.Id}/{use.To.Id}")
        );
    }

    private static void CheckShared(RuleContext context, DeviceNode device, BlockUse use, BlockUse later)
    {
        if (use.From != later.From || use.BlockSize != later.BlockSize || use.BlockSize == 1)
        {
            return;
        }

        for (var block = 0; block < use.BlockCount; block++)
        {
            var first = block;
            while (block < use.BlockCount && use.IsWhole(block) && later.IsWhole(block))
            {
                block++;
            }

            if (block == first)
            {
                continue;
            }

            var at = Channels(device, use, first * use.BlockSize, block * use.BlockSize);
            context.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"'{device.DisplayName}' sends each block of {use.BlockSize} to one place, but {at} goes to '{use.To.Id}' and to '{later.To.Id}'."
                ),
                Pointer(context, device, later, pair => pair.Channel >= at.First - 1 && pair.Channel < at.Last),
                Entity.Of("block", at),
                Entity.Of("to", $"{device.Id}/{use.To.Id}"),
                Entity.Of("to", $"{device.Id}/{later.To.Id}")
            );
        }
    }

    private static PointRange Channels(DeviceNode device, BlockUse use, int start, int end) => new(device.Id, use.From.Id, start + 1, end);

    /// <summary>The first route of the patch among the pairs; the device's profile when only factory routes are involved.</summary>
    private static string Pointer(RuleContext context, DeviceNode device, BlockUse use, Predicate<(int Channel, int Sink)> involved)
    {
        var route = int.MaxValue;
        foreach (var pair in use.Pairs)
        {
            var sink = device.First(use.To) + pair.Sink;
            if (involved(pair) && context.Via(sink) == HopKind.Route)
            {
                route = Math.Min(route, context.ViaIndex(sink));
            }
        }

        return route < int.MaxValue
            ? string.Create(CultureInfo.InvariantCulture, $"/patch/routes/{route}")
            : string.Create(CultureInfo.InvariantCulture, $"/rig/devices/{device.Index}/profile");
    }
}
