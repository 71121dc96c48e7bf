using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Tests.Assignment.ShowDraft;

namespace RoutingRules.Tests.Assignment;

/// <summary>Processors behind outputs, some with an amplifier behind them.</summary>
internal sealed class GrownProcessors(TinyDice dice, ShowDraft draft, Id<Device> console, IReadOnlyList<Id<Device>> boxes)
{
    public void AddProcessors()
    {
        var count = dice.From(1, 2);
        for (var i = 1; i <= count; i++)
        {
            var id = new Id<Device>($"proc-{i}");
            draft.Add(id.Value, Processor(), "house");
            Feed(id, dice.In(15) ? console : dice.Pick(boxes));
            if (dice.In(30))
                Feed(id, dice.Pick(boxes));

            if (dice.In(50))
            {
                draft.Add($"amp-{i}", Device(DeviceKind.Amplifier, Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }), "left");
                draft.Cable(Run(id, "out", 1, 2), Run(new($"amp-{i}"), "in", 1, 2));
            }

            for (var number = 1; number <= 4; number++)
            {
                if (dice.In(12))
                    draft.Route(dice.In(60) ? Run(id, "in", dice.From(1, 2)) : null, Run(id, "out", number));
            }

            if (dice.In(35) && !draft.Show.Feeds.IsEmpty)
                Pin(Run(id, dice.In(60) ? "in" : "out", 1));
        }
    }

    private DeviceProfile Processor()
    {
        var device = Device(
            DeviceKind.Processor,
            Group("in", PortKind.Input, 2) with
            {
                Level = SignalLevel.Line,
            },
            Group("out", PortKind.Output, 4) with
            {
                Level = SignalLevel.Line,
            }
        );
        return dice.From(1, 4) switch
        {
            1 => device with
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
            },
            2 => device with { Routing = [Entry("in", "out", RoutingMode.Fixed) with { Clearable = dice.In(50) }] },
            3 => device with
            {
                Routing = [Entry("in", "out", RoutingMode.Free)],
                FactoryRoutes = [Factory("in", 1, 2, "out", 1), Factory("in", 1, 2, "out", 3)],
            },
            _ => device with
            {
                PortGroups = [.. device.PortGroups, Group("core-in", PortKind.Sink, 4), Group("core-out", PortKind.Source, 4)],
                Routing = [Entry("in", "core-in", RoutingMode.Free), Entry("core-out", "out", RoutingMode.Free)],
                Through =
                [
                    new()
                    {
                        Kind = ThroughKind.Process,
                        From = new("core-in"),
                        To = new("core-out"),
                    },
                ],
                FactoryRoutes = [Factory("in", 1, 2, "core-in", 1), Factory("in", 1, 2, "core-in", 3), Factory("core-out", 1, 4, "out", 1)],
            },
        };
    }

    // An input takes one cable; an output may have several.
    private void Feed(Id<Device> processor, Id<Device> from)
    {
        var outs = draft.Count(from, "out");
        for (var number = 1; number <= 2 && outs > 0; number++)
        {
            var at = Run(processor, "in", number);
            if (
                dice.In(80)
                && !draft.Show.Rig.Cables.Any(cable =>
                    cable.To.Device == at.Device && cable.To.Group == at.Group && cable.To.First <= number && cable.To.Last >= number
                )
            )
                draft.Cable(Run(from, "out", dice.From(1, outs)), at);
        }
    }

    private void Pin(PointRange at)
    {
        var feed = dice.Pick(draft.Show.Feeds);
        if (feed.Source.Width == 1 && feed.To.Count < 3)
            draft.Show = draft.Show with
            {
                Feeds = [.. draft.Show.Feeds.Select(old => old == feed ? old with { To = [.. old.To, new Destination { At = at }] } : old)],
            };
    }
}
