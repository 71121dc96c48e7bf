using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Tests.Assignment.ShowDraft;

namespace RoutingRules.Tests.Assignment;

/// <summary>A tiny show while more is added to it.</summary>
internal sealed class GrownShow
{
    private readonly TinyDice dice;
    private readonly ShowDraft draft;
    private readonly Id<Device> console;
    private readonly List<Id<Device>> boxes;

    public GrownShow(TinyDice dice, Show tiny)
    {
        this.dice = dice;
        draft = new ShowDraft(tiny);
        console = tiny.Rig.Devices[0].Id;
        boxes = [.. tiny.Rig.Devices.Select(device => device.Id).Where(id => id.Value.StartsWith("box-", StringComparison.Ordinal))];
        var blocks = new GrownBlocks(dice, draft, boxes);
        if (dice.In(15))
            blocks.MakeBlocksOfOne();

        if (dice.In(20))
            blocks.RouteInBlocks();

        if (dice.In(55))
            new GrownProcessors(dice, draft, console, boxes).AddProcessors();

        if (dice.In(20))
            AddPlayer();

        if (dice.In(20))
            AddMulticore();

        if (dice.In(30))
            AddNetwork();

        if (dice.In(30))
            AddMarks();

        if (dice.In(40))
            TakeAway();
    }

    public Show Show => draft.Show;

    private void AddPlayer()
    {
        var size = draft.Profile(console).PortGroups.First(group => group.Kind == PortKind.Transmit).BlockSize ?? 1;
        draft.Add(
            "player",
            Device(
                DeviceKind.Recorder,
                Group("play", PortKind.Source, size),
                Group("transmit", PortKind.Transmit, size) with
                {
                    BlockSize = size,
                },
                Network(2)
            ) with
            {
                Routing = [Entry("play", "transmit", RoutingMode.Fixed)],
            },
            "house"
        );
        draft.Show = draft.Show with
        {
            Feeds =
            [
                .. draft.Show.Feeds,
                new Feed
                {
                    Id = new("music"),
                    Source = Run(new("player"), "play", dice.From(1, size)),
                    To = [new Destination { Devices = [dice.Pick(boxes)] }],
                },
            ],
        };
        if (draft.Show.Rig.Links.Count > 0)
            draft.Link("player-link", "net", Run(console, "net", 4), Run(new("player"), "net", 1));
    }

    private void AddMulticore()
    {
        var desk = draft.Profile(console);
        var jack = new GroupRange(new("mc"), 1, 1);
        var isFree = dice.In(40);
        draft.Change(
            desk with
            {
                PortGroups =
                [
                    .. desk.PortGroups,
                    Group("mc-send", PortKind.Transmit, 4) with
                    {
                        BlockSize = 4,
                        Carrier = jack,
                    },
                    Group("mc", PortKind.Network, 1),
                ],
                Routing = [.. desk.Routing, Entry("aux", "mc-send", RoutingMode.Free), Entry("main", "mc-send", RoutingMode.Free)],
                FactoryRoutes = dice.In(40) ? [.. desk.FactoryRoutes, Factory("aux", 1, 4, "mc-send", 1)] : desk.FactoryRoutes,
            }
        );
        draft.Add(
            "mc-box",
            Device(
                DeviceKind.StageBox,
                Group("out", PortKind.Output, dice.From(2, 4)) with
                {
                    Level = SignalLevel.Line,
                },
                Group("mc-take", PortKind.Receive, 4) with
                {
                    BlockSize = 4,
                    Carrier = jack,
                },
                Group("mc", PortKind.Network, 1)
            ) with
            {
                Routing = [Entry("mc-take", "out", isFree ? RoutingMode.Free : RoutingMode.Fixed) with { Clearable = !isFree && dice.In(30) }],
                FactoryRoutes = isFree && dice.In(50) ? [Factory("mc-take", 1, 2, "out", 1)] : [],
            },
            "right"
        );
        draft.Show = draft.Show with
        {
            Rig = draft.Show.Rig with { Networks = [.. draft.Show.Rig.Networks, new() { Id = new("multicore"), Transport = Transport.PointToPoint }] },
        };
        draft.Link("mc-link", "multicore", Run(console, "mc", 1), Run(new("mc-box"), "mc", 1));
        for (var number = 1; number <= 4; number++)
        {
            if (dice.In(25))
                draft.Route(Run(console, "aux", dice.From(1, 5)), Run(console, "mc-send", number));
        }

        if (!draft.Show.Feeds.IsEmpty && dice.In(60))
        {
            var feed = dice.Pick(draft.Show.Feeds);
            draft.Show = draft.Show with
            {
                Feeds = [.. draft.Show.Feeds.Select(old => old == feed ? old with { To = [.. old.To, new Destination { Devices = [new("mc-box")] }] } : old)],
            };
        }
    }

    // A second network beside the first: the same devices sit on both, or on one of them only; without links everything is joined.
    private void AddNetwork()
    {
        var second = new Network
        {
            Id = new("net-b"),
            Transport = Transport.RtpL24,
            PacketMicroseconds = 1000,
        };
        draft.Show = draft.Show with
        {
            Rig = draft.Show.Rig with { Networks = dice.In(50) ? [.. draft.Show.Rig.Networks, second] : [second, .. draft.Show.Rig.Networks] },
        };
        var i = 0;
        foreach (var box in boxes.Where(_ => dice.In(65)))
            draft.Link($"second-{++i}", "net-b", Run(console, "net", 3), Run(box, "net", 4));

        if (dice.In(50))
            draft.Show = draft.Show with
            {
                Patch = draft.Show.Patch with
                {
                    Streams = [.. draft.Show.Patch.Streams.Select(stream => dice.In(30) ? stream with { Network = second.Id } : stream)],
                },
            };
    }

    private void AddMarks()
    {
        foreach (var device in draft.Show.Rig.Devices)
        {
            foreach (var group in draft.Profile(device.Id).PortGroups.Where(group => group.Kind is PortKind.Output or PortKind.Transmit or PortKind.Receive))
            {
                for (var number = 1; number <= (group.Count ?? 0); number++)
                {
                    if (dice.In(group.Kind == PortKind.Output ? 10 : 2))
                        draft.Mark(Run(device.Id, group.Id.Value, number), dice.In(50));
                }
            }
        }
    }

    private void TakeAway() =>
        draft.Show = draft.Show with
        {
            Patch = draft.Show.Patch with
            {
                Routes = [.. draft.Show.Patch.Routes.Where(_ => dice.In(80))],
                Streams =
                [
                    .. draft
                        .Show.Patch.Streams.Where(_ => dice.In(85))
                        .Select(stream => dice.In(20) && stream.To.Count > 1 ? stream with { To = [.. stream.To.Take(stream.To.Count - 1)] } : stream),
                ],
            },
        };
}
