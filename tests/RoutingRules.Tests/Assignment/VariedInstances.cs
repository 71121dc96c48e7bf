using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Tests.Assignment.VariedParts;

namespace RoutingRules.Tests.Assignment;

/// <summary>Tiny shows with what stands between a patch and the room, the same one for the same seed.</summary>
/// <remarks>
/// On top of <see cref="TinyInstances"/>: outputs with several cables, to an amplifier and to somebody's ears, in either order; a second network; talkback,
/// click and comms beside amplifiers on the network that play what arrives; lines brought to outputs and slots; pins where another feed's signal arrives;
/// written routes of outputs that take their own source anyway; processors cabled in a ring.
/// </remarks>
public static class VariedInstances
{
    /// <summary>The instance of a seed.</summary>
    public static TinyInstance Make(int seed)
    {
        var tiny = TinyInstances.Make(seed);
        var dice = new TinyDice(seed + 5_000_000);
        var show = tiny.Show;
        show = dice.In(50) ? WithCables(dice, show) : show;
        show = dice.In(35) ? WithPrivate(dice, show) : show;
        show = dice.In(15) ? WithNetwork(dice, show) : show;
        show = dice.In(60) ? WithLineSinks(dice, show) : show;
        show = dice.In(40) ? WithPin(dice, show, tiny.Options) : show;
        show = dice.In(20) ? WithOwnRoutes(dice, show) : show;
        show = dice.In(10) ? WithRing(dice, show) : show;
        return tiny with { Show = show };
    }

    // Each output goes to the amplifier, to the rack, or to both, in either order.
    private static Show WithCables(TinyDice dice, Show show)
    {
        var box = dice.Pick(Boxes(show));
        var outputs = Count(show, box, "out");
        var first = dice.From(1, outputs);
        List<Cable> cables = [];
        for (var number = first; number <= Math.Min(outputs, first + 1); number++)
        {
            var way = dice.From(1, 4);
            var input = number - first + 1;
            Cable[] both = [Plug(box, number, "amp-x", input), Plug(box, number, "rack-x", input)];
            cables.AddRange(
                way == 1 ? both
                : way == 2 ? both.Reverse()
                : way == 3 ? both[..1]
                : both[1..]
            );
        }

        ValueList<Id<Device>>[] names =
        [
            [new("rack-x")],
            [new("amp-x")],
            [new("amp-x"), new("rack-x")],
            [box.Id],
        ];
        show = Add(show, "amp-x", DeviceKind.Amplifier, [Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }], [], []);
        show = Add(show, "rack-x", DeviceKind.TransmitterRack, [Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }], [], []);
        return show with
        {
            Rig = show.Rig with { Cables = [.. show.Rig.Cables, .. cables] },
            Feeds = [.. show.Feeds.Select(feed => !dice.In(45) ? feed : feed with { To = [To(feed), .. feed.To.Skip(1)] })],
        };

        Destination To(Feed feed) =>
            dice.In(15) ? new() { At = Run(new(dice.Pick(["amp-x", "rack-x"])), "in", 1, feed.Source.Width) }
            : dice.In(25) ? new() { Zones = [box.Zone!.Value] }
            : new() { Devices = dice.Pick(names) };
    }

    // An amplifier on the network plays its first slots by itself; a feed is pinned to it, and others are for nobody's ears but the crew's.
    private static Show WithPrivate(TinyDice dice, Show show)
    {
        if (dice.In(70))
        {
            var outs = dice.From(1, 2);
            show = Add(
                show,
                "pa",
                DeviceKind.Amplifier,
                [
                    Group("out", PortKind.Output, outs) with
                    {
                        Level = SignalLevel.Speaker,
                    },
                    Group("receive", PortKind.Receive, dice.Pick([2, 4])) with
                    {
                        BlockSize = 2,
                    },
                    Network(4),
                ],
                [Entry("receive", "out", RoutingMode.Free)],
                [Factory("receive", 1, dice.From(1, outs), "out", 1)]
            );
            if (!show.Rig.Links.IsEmpty)
                show = show with { Rig = show.Rig with { Links = [.. show.Rig.Links, Link("link-pa", "net", show.Rig.Devices[0].Id, new("pa"))] } };

            var at = dice.In(60) ? Run(new("pa"), "out", 1, 1) : Run(new("pa"), "receive", 1, 1);
            var index = show.Feeds.IsEmpty ? -1 : dice.From(0, show.Feeds.Count - 1);
            if (index >= 0 && show.Feeds[index].Source.Width == 1)
                show = show with { Feeds = [.. show.Feeds.Select((feed, i) => i == index ? feed with { To = [new() { At = at }] } : feed)] };
        }

        return show with
        {
            Feeds =
            [
                .. show.Feeds.Select(feed =>
                    dice.In(45) ? feed with { Role = dice.Pick([FeedRole.Talkback, FeedRole.Click, FeedRole.Comms, new("intercom")]) } : feed
                ),
            ],
        };
    }

    // A second network of its own links, listed before the first or after it.
    private static Show WithNetwork(TinyDice dice, Show show)
    {
        var network = new Network
        {
            Id = new("net-b"),
            Transport = Transport.RtpL24,
            PacketMicroseconds = 1000,
        };
        var desk = show.Rig.Devices[0].Id;
        var others = show.Rig.Devices.Skip(1).Where(device => Count(show, device, "net") > 2 && dice.In(60)).ToList();
        show = show with
        {
            Rig = show.Rig with
            {
                Networks = dice.In(50) ? [network, .. show.Rig.Networks] : [.. show.Rig.Networks, network],
                Links = [.. show.Rig.Links, .. others.Select((device, i) => Link($"second-{i + 1}", "net-b", desk, device.Id))],
            },
        };

        // What is patched already runs over the first network that both ends are on, as all streams do.
        var facts = new AssignmentFacts(show, new AssignmentOptions(), _ => null);
        return show with { Patch = show.Patch with { Streams = [.. show.Patch.Streams.Select(Rejoin)] } };

        AudioStream Rejoin(AudioStream stream)
        {
            var common = stream
                .To.Select(receiver => facts.Networks.FirstCommon(facts.Rig.Device(stream.From.Device)!, facts.Rig.Device(receiver.At.Device)!)?.Id)
                .ToList();
            return common.Count == 0 || common[0] is not { } first
                ? stream
                : stream with
                {
                    Network = first,
                    To = stream.To.Where((_, i) => common[i] == first).ToValueList(),
                };
        }
    }

    private static Show WithLineSinks(TinyDice dice, Show show)
    {
        var boxes = Boxes(show);
        return show with
        {
            Lines =
            [
                .. show.Lines.Select(line =>
                {
                    if (line.Width > 1 || !dice.In(60))
                        return line;

                    var box = dice.Pick(boxes);
                    var (group, most) =
                        dice.In(75) ? ("out", Count(show, box, "out"))
                        : dice.In(50) || Profile(show, box).Routing[0].Mode == RoutingMode.Fixed ? ("transmit", 4)
                        : ("receive", Count(show, box, "receive"));
                    var number = dice.From(1, Math.Max(1, most));
                    return line with { To = dice.In(50) ? [Run(box.Id, group, number, 1)] : [line.To[0], Run(box.Id, group, number, 1)] };
                }),
            ],
        };
    }

    private static Show WithPin(TinyDice dice, Show show, AssignmentOptions options)
    {
        var facts = new AssignmentFacts(show, options, _ => null);
        var outputs = Boxes(show).SelectMany(box => Enumerable.Range(1, Count(show, box, "out")).Select(number => new Point(box.Id, new("out"), number)));
        var sounding = outputs.Where(point => facts.Before.Source(point) is { } source && show.Feeds.Any(feed => feed.Source[0] == source)).ToList();
        var singles = Enumerable.Range(0, show.Feeds.Count).Where(i => show.Feeds[i].Source.Width == 1).ToList();
        if (sounding.Count == 0 || singles.Count == 0)
            return show;

        var (at, index) = (dice.Pick(sounding), dice.Pick(singles));
        return show with
        {
            Feeds = [.. show.Feeds.Select((feed, i) => i == index ? feed with { To = [new() { At = new(at.Device, at.Group, at.Number, at.Number) }] } : feed)],
        };
    }

    private static Show WithOwnRoutes(TinyDice dice, Show show)
    {
        var routes = new List<Route>(show.Patch.Routes);
        foreach (var box in Boxes(show).Where(box => Profile(show, box).Routing[0].Clearable))
        {
            for (var number = 1; number <= Math.Min(Count(show, box, "out"), Count(show, box, "receive")); number++)
            {
                var to = Run(box.Id, "out", number, 1);
                if (dice.In(40) && !routes.Exists(route => route.To == to))
                    routes.Add(new Route { From = Run(box.Id, "receive", number, 1), To = to });
            }
        }

        return show with
        {
            Patch = show.Patch with { Routes = routes.ToValueList() },
        };
    }

    private static Show WithRing(TinyDice dice, Show show)
    {
        foreach (var id in (string[])["ring-1", "ring-2"])
        {
            show = Add(
                show,
                id,
                DeviceKind.Processor,
                [Group("in", PortKind.Input, 2), Group("out", PortKind.Output, 2) with { Level = SignalLevel.Line }],
                [],
                []
            );
            show = show with
            {
                Rig = show.Rig with
                {
                    Profiles =
                    [
                        .. show.Rig.Profiles.Select(profile =>
                            profile.Id.Value == $"tiny/{id}"
                                ? profile with
                                {
                                    Through =
                                    [
                                        new()
                                        {
                                            Kind = ThroughKind.Process,
                                            From = new("in"),
                                            To = new("out"),
                                        },
                                    ],
                                }
                                : profile
                        ),
                    ],
                },
            };
        }

        var ring = show.Rig.Devices.TakeLast(2).ToArray();
        Cable[] cables =
        [
            new() { From = Run(ring[0].Id, "out", 1, 1), To = Run(ring[1].Id, "in", 1, 1) },
            new() { From = Run(ring[1].Id, "out", 1, 1), To = Run(ring[0].Id, "in", 1, 1) },
        ];
        var isPinned = dice.In(50);
        return show with
        {
            Rig = show.Rig with { Cables = [.. show.Rig.Cables, .. cables] },
            Feeds =
            [
                .. show.Feeds.Select(
                    (feed, i) =>
                        i == 0 && isPinned && feed.Source.Width == 1 ? feed with { To = [.. feed.To, new() { At = Run(ring[0].Id, "in", 1, 1) }] } : feed
                ),
            ],
        };
    }
}
