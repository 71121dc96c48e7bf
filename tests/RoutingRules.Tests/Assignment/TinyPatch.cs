using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>The patch a tiny show already has: blocks on the grid, contents that partly match what is asked for.</summary>
internal static class TinyPatch
{
    public static Patch Make(TinyDice dice, TinyRig rig, ValueList<Feed> feeds)
    {
        if (dice.In(30))
            return new Patch();

        var receivers = new Dictionary<(Device Sender, int Block), List<StreamReceiver>>();
        var order = new List<(Device Sender, int Block)>();
        var sinks = rig.Recorder is { } recorder ? rig.Boxes.Append(recorder) : rig.Boxes;
        foreach (var sink in sinks)
            Subscribe(dice, rig, sink, rig.Consoles, receivers, order);

        foreach (var console in rig.HasLines ? rig.Consoles : [])
            Subscribe(dice, rig, console, rig.Boxes, receivers, order);

        var streams = order.Select((key, i) => new AudioStream
        {
            Id = new($"s{i + 1}"),
            Network = new("net"),
            From = Block(rig, key.Sender, "transmit", key.Block),
            To = receivers[key].ToValueList(),
            Keep = dice.In(12),
        });
        return new Patch { Streams = streams.ToValueList(), Routes = Routes(dice, rig, feeds).ToValueList() };
    }

    private static PointRange Block(TinyRig rig, Device device, string group, int block)
    {
        var size = rig.GroupOf(device, group)!.BlockSize!.Value;
        return new PointRange(device.Id, new(group), ((block - 1) * size) + 1, block * size);
    }

    private static void Subscribe(
        TinyDice dice, TinyRig rig, Device sink, List<Device> senders, Dictionary<(Device Sender, int Block), List<StreamReceiver>> receivers, List<(Device Sender, int Block)> order)
    {
        var receive = rig.GroupOf(sink, "receive")!;
        for (var block = 1; block <= receive.Count / receive.BlockSize; block++)
        {
            var sender = dice.Pick(senders);
            var transmit = rig.GroupOf(sender, "transmit")!;
            if (!dice.In(65) || transmit.Count < transmit.BlockSize || transmit.BlockSize % receive.BlockSize != 0)
                continue;

            var from = (sender, dice.From(1, transmit.Count!.Value / transmit.BlockSize!.Value));
            if (!receivers.TryGetValue(from, out var list))
            {
                receivers.Add(from, list = []);
                order.Add(from);
            }

            var part = dice.From(0, (transmit.BlockSize.Value / receive.BlockSize!.Value) - 1) * receive.BlockSize.Value;
            list.Add(new StreamReceiver { At = Block(rig, sink, "receive", block), Channels = new NumberRange(part + 1, part + receive.BlockSize.Value) });
        }
    }

    private static List<Route> Routes(TinyDice dice, TinyRig rig, ValueList<Feed> feeds)
    {
        var routes = new List<Route>();
        foreach (var console in rig.Consoles)
        {
            var sources = feeds.Where(feed => feed.Source.Device == console.Id).SelectMany(feed => Enumerable.Range(0, feed.Source.Width).Select(i => feed.Source[i])).ToList();
            sources.Add(new Point(console.Id, new("aux"), 5));
            for (var number = 1; number <= rig.Count(console, "transmit"); number++)
            {
                var percent = dice.From(1, 100);
                if (percent <= 60)
                    Add(dice.Pick(sources), new Point(console.Id, new("transmit"), number));
                else if (percent <= 70)
                    Add(null, new Point(console.Id, new("transmit"), number));
            }

            for (var number = 1; number <= rig.Count(console, "out"); number++)
            {
                if (dice.In(20))
                    Add(dice.In(80) ? dice.Pick(sources) : null, new Point(console.Id, new("out"), number));
            }

            Connect(console, "channel", 40);
        }

        foreach (var box in rig.Boxes.Where(box => rig.Profile(box).Routing[0].Mode == RoutingMode.Free))
            Connect(box, "out", 60);

        if (rig.Recorder is { } recorder)
            Connect(recorder, "track", 50);

        foreach (var box in rig.Boxes.Where(box => rig.Profile(box).Routing[0].Clearable))
        {
            for (var number = 1; number <= rig.Count(box, "out"); number++)
            {
                if (dice.In(20))
                    Add(null, new Point(box.Id, new("out"), number));
            }
        }

        return routes;

        void Connect(Device device, string group, int percent)
        {
            for (var number = 1; number <= rig.Count(device, group); number++)
            {
                if (dice.In(percent))
                    Add(new Point(device.Id, new("receive"), dice.From(1, rig.Count(device, "receive"))), new Point(device.Id, new(group), number));
            }
        }

        void Add(Point? from, Point to) =>
            routes.Add(new Route { From = from is { } point ? new PointRange(point.Device, point.Group, point.Number, point.Number) : null, To = new(to.Device, to.Group, to.Number, to.Number) });
    }
}
