using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>What a tiny show asks for.</summary>
internal static class TinyDemands
{
    /// <summary>Feeds and lines of a show, few enough for a bound on the sets of placements.</summary>
    public static (ValueList<Feed> Feeds, ValueList<Line> Lines) Make(TinyDice dice, TinyRig rig, int most)
    {
        var placements = 1;
        var lines = rig.HasLines ? Lines(dice, rig, ref placements, most) : [];
        var feeds = new List<Feed>();
        var wanted = rig.HasLines ? dice.From(0, 2) : dice.From(1, 4);
        for (var i = 0; i < wanted; i++)
        {
            var feed = Feed(dice, rig, i);
            var more = feed.To.Aggregate(placements, (product, to) => product * Ways(rig, to));
            if (more > most)
                break;

            placements = more;
            feeds.Add(feed);
        }

        for (var i = 1; i < feeds.Count; i++)
        {
            if (dice.In(12))
                feeds[i] = feeds[i] with
                {
                    SeparateFrom = [new() { Feed = dice.Pick(feeds[..i]).Id, By = dice.Pick([SeparationBy.Device, SeparationBy.Power, SeparationBy.Link]) }],
                };
        }

        return (feeds.ToValueList(), lines.ToValueList());
    }

    private static Feed Feed(TinyDice dice, TinyRig rig, int index)
    {
        var console = dice.Pick(rig.Consoles);
        var isPair = dice.In(20);
        var (group, first) = dice.In(25) ? ("main", 1) : ("aux", isPair ? dice.Pick([1, 3]) : index + 1);
        var source = new PointRange(console.Id, new(group), first, isPair ? first + 1 : first);
        List<Destination> to = [To(dice, rig, source.Width)];
        if (dice.In(25))
            to.Add(To(dice, rig, source.Width));

        var hasSet = dice.In(45);
        return new Feed
        {
            Id = new($"feed-{index + 1}"),
            Role = dice.Pick([FeedRole.Main, FeedRole.Monitor, FeedRole.InEar, FeedRole.Utility]),
            Source = source,
            To = to.ToValueList(),
            Set = hasSet ? "set" : null,
            Part = hasSet ? dice.Pick(["left", "right", "right", null]) : null,
            Group = dice.In(20) ? "group" : null,
            Preferred = dice.In(20) ? dice.From(1, 4) : null,
            Priority = dice.Pick([Priority.Normal, Priority.Normal, Priority.Normal, Priority.Critical, Priority.High, Priority.Low]),
            Hold = dice.In(20) ? dice.In(50) : null,
            Spread = to.Count > 1 && dice.In(30),
        };
    }

    private static Destination To(TinyDice dice, TinyRig rig, int width)
    {
        if (dice.In(14))
            return new Destination { At = Pin(dice, rig, width) };

        if (rig.Cabled is { } cabled && dice.In(25))
            return new Destination { Devices = [cabled.Id] };

        if (dice.In(15))
            return new Destination { Zones = [dice.In(85) ? dice.Pick(rig.Boxes).Zone!.Value : new("house")] };

        var devices = new List<Id<Device>> { dice.Pick(rig.Boxes).Id };
        if (dice.In(45))
            devices.Add(dice.Pick(rig.Boxes).Id);

        if (dice.In(10))
            devices.Add(dice.Pick(rig.Consoles).Id);

        return new Destination { Devices = devices.Distinct().ToValueList() };
    }

    private static PointRange Pin(TinyDice dice, TinyRig rig, int width)
    {
        if (rig.Cabled is { } cabled && dice.In(30))
            return new PointRange(cabled.Id, new("in"), 1, width);

        if (rig.Recorder is { } recorder && dice.In(30))
            return new PointRange(recorder.Id, new(dice.Pick(["receive", "track"])), 1, width);

        var box = dice.Pick(rig.Boxes);
        var first = dice.From(1, Math.Max(1, rig.Count(box, "out") - width + 1));
        return new PointRange(box.Id, new("out"), first, first + width - 1);
    }

    private static int Ways(TinyRig rig, Destination to) =>
        to.At is not null
            ? 1
            : 1
                + rig.Rig.Devices.Where(device => to.Devices.Contains(device.Id) || to.Zones.Contains(device.Zone!.Value))
                    .Sum(device => Math.Max(rig.Count(device, "out"), device == rig.Cabled ? 2 : 0));

    private static List<Line> Lines(TinyDice dice, TinyRig rig, ref int placements, int most)
    {
        var lines = new List<Line>();
        var channels = rig
            .Consoles.SelectMany(console => Enumerable.Range(1, 4).Select(number => new PointRange(console.Id, new("channel"), number, number)))
            .ToArray();
        dice.Shuffle(channels);
        var wanted = dice.From(1, 3);
        var next = 0;
        for (var i = 0; i < wanted; i++)
        {
            var isPair = i == 0 && dice.In(25);
            if (isPair)
                channels = channels.Where(channel => channel.Device != rig.Consoles[0].Id || channel.First < 3).ToArray();

            var entries = isPair ? 1 : dice.From(1, 2);
            ValueList<PointRange> to = isPair ? [new PointRange(rig.Consoles[0].Id, new("channel"), 3, 4)] : channels.Skip(next).Take(entries).ToValueList();
            next += isPair ? 0 : entries;
            var from = From(dice, rig, isPair ? 2 : 1);
            var inputs =
                from.At.Count > 0
                    ? 1
                    : rig.Boxes.Where(box => from.Devices.Contains(box.Id) || from.Zones.Contains(box.Zone!.Value)).Sum(box => rig.Count(box, "in"));
            var more = placements * (1 + (inputs * ((1 << to.Count) - 1)));
            if (more > most || to.IsEmpty)
                break;

            placements = more;
            lines.Add(
                new Line
                {
                    Id = new($"line-{i + 1}"),
                    Kind = dice.In(60) ? LineKind.Microphone : LineKind.Line,
                    Phantom = dice.In(20) ? PhantomNeed.Required : PhantomNeed.Either,
                    Width = isPair ? 2 : 1,
                    From = from,
                    To = to,
                    Priority = dice.Pick([Priority.Normal, Priority.Normal, Priority.High, Priority.Low]),
                    Preferred = dice.In(20) ? dice.From(1, 3) : null,
                    Hold = dice.In(30) ? true : null,
                    Group = dice.In(20) ? "group" : null,
                }
            );
        }

        return lines;
    }

    private static LineOrigin From(TinyDice dice, TinyRig rig, int width)
    {
        if (dice.In(25))
        {
            // A split never names one box twice.
            var boxes = rig.Boxes.ToArray();
            dice.Shuffle(boxes);
            return new LineOrigin { At = boxes.Take(dice.In(40) ? 2 : 1).Select(box => new PointRange(box.Id, new("in"), 1, width)).ToValueList() };
        }

        if (dice.In(15))
            return new LineOrigin { Zones = [dice.Pick(rig.Boxes).Zone!.Value] };

        return new LineOrigin { Devices = new[] { dice.Pick(rig.Boxes).Id, dice.Pick(rig.Boxes).Id }.Distinct().ToValueList() };
    }
}
