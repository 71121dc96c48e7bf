using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>The patch a tiny show already has: blocks on the grid, contents that partly match what is asked for.</summary>
internal sealed class TinyPatch
{
    private readonly TinyDice dice;
    private readonly TinyRig rig;
    private readonly Dictionary<(Device Sender, int Block), List<StreamReceiver>> receivers = [];
    private readonly List<(Device Sender, int Block)> order = [];
    private readonly Dictionary<Point, Point> listens = [];
    private readonly Dictionary<Point, Point?> routes = [];
    private readonly List<Point> routed = [];

    private TinyPatch(TinyDice dice, TinyRig rig)
    {
        this.dice = dice;
        this.rig = rig;
    }

    public static Patch Make(TinyDice dice, TinyRig rig, ValueList<Feed> feeds)
    {
        if (dice.In(25))
            return new Patch();

        var patch = new TinyPatch(dice, rig);
        foreach (var sink in rig.Recorder is { } recorder ? rig.Boxes.Append(recorder) : rig.Boxes)
            patch.Subscribe(sink, rig.Consoles);

        foreach (var console in rig.HasLines ? rig.Consoles : [])
            patch.Subscribe(console, rig.Boxes);

        patch.Serve(feeds);
        patch.Fill(feeds);
        var streams = patch.order.Select(
            (key, i) =>
                new AudioStream
                {
                    Id = new($"s{i + 1}"),
                    Network = new("net"),
                    From = patch.Block(key.Sender, "transmit", key.Block),
                    To = patch.receivers[key].ToValueList(),
                    Keep = dice.In(10),
                }
        );
        return new Patch
        {
            Streams = streams.ToValueList(),
            Routes = patch.routed.Select(to => new Route { From = patch.routes[to] is { } from ? Run(from) : null, To = Run(to) }).ToValueList(),
        };
    }

    private PointRange Block(Device device, string group, int block)
    {
        var size = rig.GroupOf(device, group)!.BlockSize!.Value;
        return new PointRange(device.Id, new(group), ((block - 1) * size) + 1, block * size);
    }

    private void Subscribe(Device sink, List<Device> senders)
    {
        var receive = rig.GroupOf(sink, "receive")!;
        for (var block = 1; block <= receive.Count / receive.BlockSize; block++)
        {
            var sender = dice.Pick(senders);
            var transmit = rig.GroupOf(sender, "transmit")!;
            if (!dice.In(75) || transmit.Count < transmit.BlockSize || transmit.BlockSize % receive.BlockSize != 0)
                continue;

            var from = (sender, dice.From(1, transmit.Count!.Value / transmit.BlockSize!.Value));
            if (!receivers.TryGetValue(from, out var list))
            {
                receivers.Add(from, list = []);
                order.Add(from);
            }

            var part = dice.From(0, (transmit.BlockSize.Value / receive.BlockSize!.Value) - 1) * receive.BlockSize.Value;
            var at = Block(sink, "receive", block);
            list.Add(new StreamReceiver { At = at, Channels = new NumberRange(part + 1, part + receive.BlockSize.Value) });
            for (var i = 0; i < at.Width; i++)
                listens.Add(at[i], Block(sender, "transmit", from.Item2)[part + i]);
        }
    }

    // Puts feeds on outputs that listen to their console, as somebody may have patched them by hand.
    private void Serve(ValueList<Feed> feeds)
    {
        foreach (var feed in feeds)
        {
            foreach (var to in feed.To)
            {
                var box = to.Devices.IsEmpty ? dice.Pick(rig.Boxes) : rig.Boxes.FirstOrDefault(box => box.Id == dice.Pick(to.Devices));
                if (box is null || !dice.In(75))
                    continue;

                var outs = rig.Count(box, "out");
                var first =
                    to.At is { } at && at.Device == box.Id && dice.In(70) ? at.First
                    : feed.Source.Width == 2 && dice.In(80) ? 1
                    : dice.From(1, outs);
                for (var i = 0; i < feed.Source.Width && first + i <= outs; i++)
                    Serve(box, feed.Source[i], first + i);
            }
        }
    }

    private void Serve(Device box, Point source, int number)
    {
        var slot = new Point(box.Id, new("receive"), number);
        if (rig.Profile(box).Routing[0].Mode == RoutingMode.Free)
        {
            slot = new Point(box.Id, new("receive"), dice.From(1, rig.Count(box, "receive")));
            Add(slot, new Point(box.Id, new("out"), number));
        }

        if (listens.TryGetValue(slot, out var transmit) && transmit.Device == source.Device)
            Add(source, transmit);
    }

    private void Fill(ValueList<Feed> feeds)
    {
        foreach (var console in rig.Consoles)
        {
            var sources = feeds
                .Where(feed => feed.Source.Device == console.Id)
                .SelectMany(feed => Enumerable.Range(0, feed.Source.Width).Select(i => feed.Source[i]))
                .ToList();
            sources.Add(new Point(console.Id, new("aux"), 5));
            for (var number = 1; number <= rig.Count(console, "transmit"); number++)
            {
                if (dice.In(35))
                    Add(dice.In(70) ? dice.Pick(sources) : null, new Point(console.Id, new("transmit"), number));
            }

            for (var number = 1; number <= rig.Count(console, "out"); number++)
            {
                if (dice.In(20))
                    Add(dice.In(80) ? dice.Pick(sources) : null, new Point(console.Id, new("out"), number));
            }

            Connect(console, "channel", 50);
        }

        foreach (var box in rig.Boxes)
        {
            var routing = rig.Profile(box).Routing[0];
            if (routing.Mode == RoutingMode.Free)
                Connect(box, "out", 25);

            for (var number = 1; number <= rig.Count(box, "out"); number++)
            {
                if (routing.Clearable && dice.In(15))
                    Add(null, new Point(box.Id, new("out"), number));
            }
        }

        if (rig.Recorder is { } recorder)
            Connect(recorder, "track", 50);
    }

    private void Connect(Device device, string group, int percent)
    {
        for (var number = 1; number <= rig.Count(device, group); number++)
        {
            if (dice.In(percent))
                Add(new Point(device.Id, new("receive"), dice.From(1, rig.Count(device, "receive"))), new Point(device.Id, new(group), number));
        }
    }

    private void Add(Point? from, Point to)
    {
        if (routes.TryAdd(to, from))
            routed.Add(to);
    }

    private static PointRange Run(Point point) => new(point.Device, point.Group, point.Number, point.Number);
}
