using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Assignment.Problem;

/// <summary>Numbers the port groups of a show and the blocks of what can be sent and received, those of multicores last.</summary>
internal sealed class BlockLayout
{
    private readonly ResolvedShow show;
    private readonly SignalGraph graph;
    private readonly Exclusions without;
    private readonly List<TransmitBlock> transmitBlocks = [];
    private readonly List<ReceiveBlock> receiveBlocks = [];

    public BlockLayout(ResolvedShow show, Exclusions without)
    {
        this.show = show;
        this.without = without;
        graph = show.Graph;
        PortGroupOf = new int[graph.PointCount];
        TransmitBlockOf = new int[graph.PointCount];
        ReceiveBlockOf = new int[graph.PointCount];
        Array.Fill(TransmitBlockOf, -1);
        Array.Fill(ReceiveBlockOf, -1);
        NumberPortGroups();
        AddBlocks();
        AddCarriers();
    }

    public int PortGroupCount { get; private set; }

    /// <summary>The port group of each point.</summary>
    public int[] PortGroupOf { get; }

    /// <summary>The transmit block of each point; -1 for none.</summary>
    public int[] TransmitBlockOf { get; }

    /// <summary>The receive block of each point; -1 for none.</summary>
    public int[] ReceiveBlockOf { get; }

    public IReadOnlyList<TransmitBlock> Transmit => transmitBlocks;

    public IReadOnlyList<ReceiveBlock> Receive => receiveBlocks;

    private void NumberPortGroups()
    {
        var next = 0;
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Groups)
            {
                PortGroupOf.AsSpan(device.FirstPoint + group.Offset, group.Count).Fill(next++);
            }
        }

        PortGroupCount = next;
    }

    private void AddBlocks()
    {
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Groups)
            {
                if (group.IsCarrier || without.Devices[device.Index])
                {
                    continue;
                }

                for (var block = 0; block < group.BlockCount; block++)
                {
                    var first = device.FirstPoint + group.Offset + (block * group.BlockSize);
                    if (group.Kind == PortKind.Transmit)
                    {
                        AddTransmit(device.Index, first, group.BlockSize);
                    }
                    else if (group.Kind == PortKind.Receive)
                    {
                        AddReceive(device.Index, first, group.BlockSize).InputStart = InputStart(first, group.BlockSize);
                    }
                }
            }
        }
    }

    private TransmitBlock AddTransmit(int device, int first, int width)
    {
        var block = new TransmitBlock
        {
            Id = transmitBlocks.Count,
            Device = device,
            First = first,
            Width = width,
        };
        TransmitBlockOf.AsSpan(first, width).Fill(block.Id);
        transmitBlocks.Add(block);
        return block;
    }

    private ReceiveBlock AddReceive(int device, int first, int width)
    {
        var block = new ReceiveBlock
        {
            Id = receiveBlocks.Count,
            Device = device,
            First = first,
            Width = width,
            PortGroup = PortGroupOf[first],
        };
        ReceiveBlockOf.AsSpan(first, width).Fill(block.Id);
        receiveBlocks.Add(block);
        return block;
    }

    /// <summary>The slot the block starts from in the input, when it takes a whole run of slots on the grid of the sender's block.</summary>
    private int InputStart(int first, int width)
    {
        var start = graph.Hops[first] == HopKind.Stream ? graph.Upstreams[first] : -1;
        for (var position = 1; position < width && start >= 0; position++)
        {
            start = graph.Hops[first + position] == HopKind.Stream && graph.Upstreams[first + position] == start + position ? start : -1;
        }

        if (start < 0)
        {
            return -1;
        }

        var group = graph.GroupOf(new PointIndex(start));
        var number = graph.NumberOf(new PointIndex(start)) - 1;
        return group.BlockSize % width == 0 && number % width == 0 && number / group.BlockSize < group.BlockCount ? start : -1;
    }

    private void AddCarriers()
    {
        foreach (var link in show.Links)
        {
            if (link.State != ConnectionState.Connected || without.Links[link.Index])
            {
                continue;
            }

            AddCarrier(link.Model.From, link.Model.To);
            AddCarrier(link.Model.To, link.Model.From);
        }
    }

    private void AddCarrier(PointRange from, PointRange to)
    {
        var sender = graph.Device(from.Device)!;
        var receiver = graph.Device(to.Device)!;
        if (
            GraphBuilder.CarrierGroup(sender, from, PortKind.Transmit) is not { } transmit
            || GraphBuilder.CarrierGroup(receiver, to, PortKind.Receive) is not { } receive
        )
        {
            return;
        }

        var width = Math.Min(transmit.Count, receive.Count);
        var sending = sender.FirstPoint + transmit.Offset;
        var receiving = receiver.FirstPoint + receive.Offset;
        if (width == 0 || graph.Upstreams[receiving] != sending || graph.Hops[receiving] != HopKind.Carrier)
        {
            return;
        }

        var transmitBlock = AddTransmit(sender.Index, sending, width);
        var receiveBlock = AddReceive(receiver.Index, receiving, width);
        transmitBlock.CarrierTo = receiveBlock.Id;
        receiveBlock.CarrierFrom = transmitBlock.Id;
        receiveBlock.InputStart = sending;
    }
}
