using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Streams, carrier links, free slots and network jacks of a device.</summary>
internal sealed class SlotSheetBuilder(SheetFacts facts)
{
    private readonly SignalGraph graph = facts.Graph;

    public ValueList<SheetSentStream> Sent(DeviceNode device)
    {
        var sent = new List<SheetSentStream>();
        foreach (var stream in facts.Show.Streams)
        {
            if (!stream.From.IsNone && graph.DeviceOf(stream.From) == device)
            {
                sent.Add(
                    new SheetSentStream
                    {
                        Id = stream.Model.Id.Value,
                        Label = stream.Model.Label,
                        Slots = stream.Model.From,
                        Contents = Contents(stream.From, stream.Model.From.Width),
                        Receivers = stream
                            .Receivers.Where(receiver => !receiver.At.IsNone)
                            .Select(receiver => new SheetReceiver
                            {
                                DeviceLabel = graph.DeviceOf(receiver.At).DisplayName,
                                Slots = receiver.Model.At,
                                Channels = new NumberRange(receiver.FirstChannel, receiver.FirstChannel + receiver.Model.At.Width - 1),
                            })
                            .ToValueList(),
                    }
                );
            }
        }

        foreach (var run in CarrierRuns(point => graph.DeviceOf(graph.Upstream(point)) == device))
        {
            var from = graph.Upstream(run.First);
            sent.Add(
                new SheetSentStream
                {
                    Id = run.Id,
                    IsLink = true,
                    Slots = graph.Address(from, run.Width),
                    Contents = Contents(from, run.Width),
                    Receivers =
                    [
                        new SheetReceiver
                        {
                            DeviceLabel = graph.DeviceOf(run.First).DisplayName,
                            Slots = graph.Address(run.First, run.Width),
                            Channels = new NumberRange(1, run.Width),
                        },
                    ],
                }
            );
        }

        return sent.ToValueList();
    }

    public ValueList<SheetReceivedStream> Received(DeviceNode device)
    {
        var received = new List<SheetReceivedStream>();
        foreach (var stream in facts.Show.Streams)
        {
            foreach (var receiver in stream.Receivers)
            {
                if (!receiver.At.IsNone && graph.DeviceOf(receiver.At) == device && !stream.From.IsNone)
                {
                    received.Add(
                        Take(stream.Model.Id.Value, false, receiver.At, receiver.Model.At.Width, receiver.FirstChannel, stream.From, stream.Model.From.Width)
                    );
                }
            }
        }

        foreach (var run in CarrierRuns(point => graph.DeviceOf(point) == device))
        {
            received.Add(Take(run.Id, true, run.First, run.Width, 1, graph.Upstream(run.First), run.Width));
        }

        return received.ToValueList();
    }

    private SheetReceivedStream Take(string id, bool isLink, PointIndex at, int width, int firstChannel, PointIndex sender, int senderWidth) =>
        new()
        {
            Id = id,
            IsLink = isLink,
            Slots = graph.Address(at, width),
            Channels = new NumberRange(firstChannel, firstChannel + width - 1),
            SenderLabel = graph.DeviceOf(sender).DisplayName,
            SenderSlots = graph.Address(sender, senderWidth),
            Contents = Contents(at, width),
        };

    /// <summary>Slots that neither a stream nor a link uses, as runs, transmit before receive as the profile has them.</summary>
    public ValueList<PointRange> Free(DeviceNode device)
    {
        var used = new HashSet<int>();
        foreach (var stream in facts.Show.Streams)
        {
            for (var i = 0; !stream.From.IsNone && i < stream.Model.From.Width; i++)
            {
                used.Add(stream.From.Value + i);
            }
        }

        var free = new List<PointRange>();
        foreach (var group in device.Groups.Where(group => group.Kind is PortKind.Transmit or PortKind.Receive))
        {
            var first = 0;
            for (var i = 0; i <= group.Count; i++)
            {
                var point = device.First(group) + i;
                if (i == group.Count || used.Contains(point.Value) || graph.Via(point) is HopKind.Stream or HopKind.Carrier || IsCarried(point))
                {
                    if (i > first)
                    {
                        free.Add(new PointRange(device.Id, group.Id, first + 1, i));
                    }

                    first = i + 1;
                }
            }
        }

        return free.ToValueList();
    }

    private bool IsCarried(PointIndex point)
    {
        foreach (var next in graph.Fed(point))
        {
            if (graph.Via(new PointIndex(next)) == HopKind.Carrier)
            {
                return true;
            }
        }

        return false;
    }

    public ValueList<SheetJack> Jacks(DeviceNode device)
    {
        var jacks = new List<SheetJack>();
        foreach (var group in device.Groups.Where(group => group.Kind == PortKind.Network))
        {
            for (var i = 0; i < group.Count; i++)
            {
                var point = device.First(group) + i;
                var links = facts.Show.Links.Where(link => link.State == ConnectionState.Connected && (link.From == point || link.To == point)).ToArray();
                jacks.AddRange(links.Select(link => Jack(point, link)));
                if (links.Length == 0)
                {
                    jacks.Add(new SheetJack { At = facts.Place(point) });
                }
            }
        }

        return jacks.ToValueList();
    }

    private SheetJack Jack(PointIndex point, LinkNode link)
    {
        var network = facts.Show.Document.Rig.Networks[link.Network];
        return new SheetJack
        {
            At = facts.Place(point),
            Link = link.Model.Id.Value,
            FarEnd = facts.Place(link.From == point ? link.To : link.From),
            Network = network.Name ?? network.Id.Value,
            Cable = SheetWords.Cable(link.Model),
        };
    }

    private ValueList<SheetSlot> Contents(PointIndex first, int width)
    {
        var number = graph.NumberOf(first);
        return Enumerable.Range(0, width).Select(i => new SheetSlot { Number = number + i, Name = NameOf(first + i) }).ToValueList();
    }

    private string? NameOf(PointIndex point) =>
        facts.Signal(point) is not { } signal ? null
        : signal.Names.Count > 0 ? string.Join(" / ", signal.Names)
        : signal.Source.ToString();

    private List<(string Id, PointIndex First, int Width)> CarrierRuns(Func<PointIndex, bool> isWanted)
    {
        var runs = new List<(string Id, PointIndex First, int Width)>();
        for (var i = 0; i < graph.PointCount; i++)
        {
            var point = new PointIndex(i);
            if (graph.Via(point) != HopKind.Carrier || !isWanted(point))
            {
                continue;
            }

            var id = facts.Show.Links[graph.ViaIndex(point)].Model.Id.Value;
            if (runs.Count > 0 && runs[^1].Id == id && runs[^1].First + runs[^1].Width == point)
            {
                runs[^1] = (id, runs[^1].First, runs[^1].Width + 1);
            }
            else
            {
                runs.Add((id, point, 1));
            }
        }

        return runs;
    }
}
