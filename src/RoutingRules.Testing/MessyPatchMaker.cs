using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>
/// Makes patches full of mistakes: overlaps, blocks off their grid, routes no profile allows, unequal widths, names that do not exist, loops.
/// </summary>
internal sealed class MessyPatchMaker(Dice dice, RigView rig)
{
    private readonly GroupView[] all = [.. rig.Groups.Where(group => group.Count > 0)];

    public Patch Make()
    {
        var circle = Circle();
        return new()
        {
            Streams = [.. circle is { } stream ? [stream] : Array.Empty<AudioStream>(), .. Streams().AsSpan()],
            Routes = [.. circle is { } sent ? InsertRoutes(sent.From.Device) : [], .. Routes().AsSpan()],
        };
    }

    /// <summary>A console that sends itself what returns from its insert, now and then.</summary>
    private AudioStream? Circle()
    {
        var inserts = rig
            .Devices.Where(entry => entry.Profile.PortGroups.Any(group => group.Id.Value == "insert-send"))
            .Select(entry => entry.Device.Id)
            .ToArray();
        return inserts.Length == 0 || dice.Chance(40)
            ? null
            : new AudioStream
            {
                Id = new("circle"),
                Network = new("audio"),
                From = One(inserts[0], "transmit"),
                To = [new() { At = One(inserts[0], "receive") }],
            };
    }

    private static Route[] InsertRoutes(Id<Device> desk) =>
        [new() { From = One(desk, "receive"), To = One(desk, "insert-send") }, new() { From = One(desk, "insert-return"), To = One(desk, "transmit") }];

    private static PointRange One(Id<Device> device, string group) => new(device, new(group), 1, 1);

    private ValueList<AudioStream> Streams()
    {
        var senders = rig.OfKind(PortKind.Transmit).ToArray();
        var receivers = rig.OfKind(PortKind.Receive).ToArray();
        var streams = new List<AudioStream>();
        for (var count = dice.Grow(0, 6); count > 0 && senders.Length > 0; count--)
        {
            var from = dice.Chance(93) ? Run(dice.Pick(senders)) : Anything();
            streams.Add(
                new AudioStream
                {
                    Id = new(string.Create(CultureInfo.InvariantCulture, $"s{dice.Roll(1, 9)}")),
                    Network = new("audio"),
                    From = from,
                    To = Receivers(from.Width, receivers),
                }
            );
        }

        return streams.ToValueList();
    }

    private ValueList<StreamReceiver> Receivers(int width, GroupView[] groups)
    {
        var receivers = new List<StreamReceiver>();
        for (var count = dice.Grow(0, 4); count > 0 && groups.Length > 0; count--)
        {
            var group = dice.Pick(groups);
            var takes = dice.Chance(60) ? width : dice.Roll(1, width);
            var first = dice.Roll(1, Math.Max(1, width - takes + 1)) + (dice.Chance(5) ? 1 : 0);
            var wide = dice.Chance(92) ? takes : takes + 1;
            receivers.Add(
                new StreamReceiver
                {
                    At = dice.Chance(95) ? (wide <= group.Count ? group.Somewhere(dice, wide) : group.Range(1, wide)) : Anything(),
                    Channels = takes == width && dice.Chance(60) ? null : new(first, first + takes - 1),
                }
            );
        }

        return receivers.ToValueList();
    }

    private ValueList<Route> Routes()
    {
        var routes = new List<Route>();
        var feeding = rig.OfKind(PortKind.Source, PortKind.Input, PortKind.Receive).ToArray();
        for (var count = dice.Grow(0, 12); count > 0 && all.Length > 0; count--)
        {
            var sinks = rig.OfKind(PortKind.Sink, PortKind.Output, PortKind.Transmit).ToArray();
            if (sinks.Length == 0 || !dice.Chance(95))
            {
                routes.Add(new Route { From = dice.Chance(80) ? Anything() : null, To = Anything() });
                continue;
            }

            var sink = dice.Pick(sinks);
            var own = feeding.Where(group => group.Device.Id == sink.Device.Id).ToArray();
            if (own.Length == 0 || dice.Chance(15))
            {
                routes.Add(new Route { From = null, To = Run(sink) });
                continue;
            }

            if (sink.Profile.Routing.FirstOrDefault(entry => entry.To == sink.Group.Id && entry.Mode == RoutingMode.Fixed) is { } entry && dice.Chance(60))
            {
                // Own source and nothing, at the same few sinks, in either order.
                var number = dice.Roll(1, Math.Min(2, sink.Count));
                routes.Add(
                    new Route { From = dice.Chance(50) ? new PointRange(sink.Device.Id, entry.From, number, number) : null, To = sink.Range(number, 1) }
                );
                continue;
            }

            var source = dice.Pick(own);
            var width = dice.Roll(1, Math.Min(source.Count, sink.Count));
            var to = sink.Somewhere(dice, width);
            routes.Add(
                new Route { From = to.Last <= source.Count && dice.Chance(25) ? source.Range(to.First, width) : source.Somewhere(dice, width), To = to }
            );
        }

        return routes.ToValueList();
    }

    private PointRange Run(GroupView group) => group.Somewhere(dice, dice.Roll(1, Math.Min(8, group.Count)));

    /// <summary>Any run of any device, beyond the end of its group or with an unknown name now and then.</summary>
    private PointRange Anything()
    {
        var group = dice.Pick(all);
        return dice.Roll(0, 3) switch
        {
            0 => group.Range(dice.Roll(1, group.Count), dice.Roll(1, 4)),
            1 => new PointRange(new("ghost"), group.Group.Id, 1, 1),
            2 => new PointRange(group.Device.Id, new("ghost"), 1, 1),
            _ => Run(group),
        };
    }
}
