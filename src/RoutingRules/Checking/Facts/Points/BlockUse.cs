using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Which channels of a group another group takes, under one block routing entry, in the patch as it stands.</summary>
internal sealed class BlockUse
{
    private readonly int[] times;

    private BlockUse(RoutingEntry entry, GroupNode from, GroupNode to)
    {
        Entry = entry;
        From = from;
        To = to;
        BlockSize = entry.BlockSize ?? 1;
        times = new int[from.Count];
    }

    public RoutingEntry Entry { get; }

    public GroupNode From { get; }

    public GroupNode To { get; }

    public int BlockSize { get; }

    public int BlockCount => From.Count / BlockSize;

    /// <summary>Every pair of source position and sink position, from 0, by sink.</summary>
    public List<(int Channel, int Sink)> Pairs { get; } = [];

    /// <summary>How often a source position, from 0, is taken.</summary>
    public int Times(int channel) => times[channel];

    public static BlockUse Of(RuleContext context, DeviceNode device, RoutingEntry entry)
    {
        var use = new BlockUse(entry, device.Group(entry.From)!, device.Group(entry.To)!);
        for (var sink = 0; sink < use.To.Count; sink++)
        {
            var source = context.Upstream(device.First(use.To) + sink);
            var channel = source.Value - device.First(use.From).Value;
            if (!source.IsNone && channel >= 0 && channel < use.From.Count)
            {
                use.times[channel]++;
                use.Pairs.Add((channel, sink));
            }
        }

        return use;
    }

    /// <summary>How many channels of a block, from 0, are taken at least once.</summary>
    public int Taken(int block)
    {
        var taken = 0;
        for (var i = 0; i < BlockSize; i++)
        {
            taken += times[(block * BlockSize) + i] > 0 ? 1 : 0;
        }

        return taken;
    }

    /// <summary>True when every channel of a block is taken exactly once.</summary>
    public bool IsWhole(int block)
    {
        for (var i = 0; i < BlockSize; i++)
        {
            if (times[(block * BlockSize) + i] != 1)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// True when the channels taken in a run of blocks, none of them whole, stand in one row as long as whole blocks: it starts off the grid.
    /// </summary>
    public bool IsMisaligned(int firstBlock, int blocks)
    {
        var first = -1;
        var last = -1;
        var taken = 0;
        for (var channel = firstBlock * BlockSize; channel < (firstBlock + blocks) * BlockSize; channel++)
        {
            if (times[channel] == 1)
            {
                first = first < 0 ? channel : first;
                last = channel;
                taken++;
            }
            else if (times[channel] > 1)
            {
                return false;
            }
        }

        return taken > 0 && taken == last - first + 1 && taken % BlockSize == 0;
    }
}
