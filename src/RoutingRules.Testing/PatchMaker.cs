using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>
/// Makes valid patches: routes that profiles allow, whole blocks on their grids, within stream limits, each sink claimed once. No insert is fed
/// from the network, so that no signal comes back to itself.
/// </summary>
internal sealed class PatchMaker(Dice dice, RigView rig)
{
    private readonly HashSet<Point> claimed = [];
    private readonly HashSet<PointRange> sentBlocks = [];
    private readonly Dictionary<Id<Device>, int> received = [];

    public Patch Make() =>
        new()
        {
            Streams = Streams(),
            Routes = Routes(),
            Inputs = Inputs(),
            Labels = Labels(),
        };

    private ValueList<AudioStream> Streams()
    {
        var streams = new List<AudioStream>();
        var receivers = rig.OfKind(PortKind.Receive).Where(group => group.Group.Carrier is null).ToArray();
        foreach (var sender in rig.OfKind(PortKind.Transmit).Where(group => group.Group.Carrier is null))
        {
            var wanted = dice.Roll(0, Math.Min(sender.BlockCount, sender.Profile.Limits?.StreamsSent ?? int.MaxValue));
            foreach (var block in dice.Shuffle(Enumerable.Range(0, sender.BlockCount)).Take(wanted))
            {
                streams.Add(
                    new AudioStream
                    {
                        Id = new(string.Create(CultureInfo.InvariantCulture, $"s{streams.Count + 1}")),
                        Network = new("audio"),
                        From = sender.Block(block),
                        To = Receivers(sender, receivers),
                    }
                );
                streams[^1] = streams[^1] with { Keep = !streams[^1].To.IsEmpty && dice.Chance(10) };
            }
        }

        return streams.ToValueList();
    }

    private ValueList<StreamReceiver> Receivers(GroupView sender, GroupView[] groups)
    {
        var receivers = new List<StreamReceiver>();
        var devices = new HashSet<Id<Device>>();
        for (var count = dice.Grow(0, 4); count > 0 && groups.Length > 0; count--)
        {
            var group = dice.Pick(groups);
            var size = group.BlockSize;
            var isNew = !devices.Contains(group.Device.Id);
            if (
                group.Device.Id == sender.Device.Id
                || group.BlockCount == 0
                || sender.BlockSize % size != 0
                || !rig.Reaches(sender.Device.Id, group.Device.Id)
                || (isNew && received.GetValueOrDefault(group.Device.Id) >= (group.Profile.Limits?.StreamsReceived ?? int.MaxValue))
            )
            {
                continue;
            }

            var isWhole = sender.BlockSize <= group.BlockCount * size && dice.Chance(40);
            var width = isWhole ? sender.BlockSize : size;
            var at = group.Range((dice.Roll(0, group.BlockCount - (width / size)) * size) + 1, width);
            if (!Claim(at))
            {
                continue;
            }

            if (devices.Add(group.Device.Id))
            {
                received[group.Device.Id] = received.GetValueOrDefault(group.Device.Id) + 1;
            }

            var part = dice.Roll(0, (sender.BlockSize / size) - 1);
            var isAll = width == sender.BlockSize;
            receivers.Add(
                new StreamReceiver
                {
                    At = at,
                    Channels =
                        isAll && dice.Chance(70) ? null
                        : isAll ? new(1, width)
                        : new((part * size) + 1, (part + 1) * size),
                }
            );
        }

        return receivers.ToValueList();
    }

    private ValueList<Route> Routes()
    {
        var routes = new List<Route>();
        foreach (var (device, profile) in rig.Devices)
        {
            foreach (var entry in profile.Routing)
            {
                var from = rig.Group(device.Id, entry.From)!;
                var to = rig.Group(device.Id, entry.To)!;
                var isInsertFromNetwork = from.Group.Kind == PortKind.Receive && profile.Through.Any(path => path.From == entry.To);
                for (var count = dice.Grow(0, 4); count > 0 && from.Count > 0 && to.Count > 0 && !isInsertFromNetwork; count--)
                {
                    AddRoute(routes, entry, from, to);
                }
            }
        }

        return dice.Shuffle(routes).ToValueList();
    }

    private void AddRoute(List<Route> routes, RoutingEntry entry, GroupView from, GroupView to)
    {
        PointRange? source;
        PointRange sink;
        if (entry.Mode == RoutingMode.Fixed)
        {
            source = null;
            sink = to.Somewhere(dice, 1);
            if (!entry.Clearable || sink.First > from.Count)
            {
                return;
            }
        }
        else if (entry.Mode == RoutingMode.Block)
        {
            var size = entry.BlockSize ?? 1;
            if (to.Count < size)
            {
                return;
            }

            // Each block of sources goes to one block of sinks: to its own where factory routes may have sent it there already.
            var block = dice.Roll(0, (to.Count / size) - 1);
            var isFree = entry.Reordering && !from.Profile.FactoryRoutes.Any(route => route.To.Group == entry.To);
            var taken = isFree ? dice.Roll(0, (from.Count / size) - 1) : block;
            sink = to.Range((block * size) + 1, size);
            source = (taken + 1) * size <= from.Count ? from.Range((taken * size) + 1, size) : null;
            if (source is { } whole && !sentBlocks.Add(whole))
            {
                return;
            }
        }
        else
        {
            var width = dice.Roll(1, Math.Min(4, Math.Min(from.Count, to.Count)));
            sink = to.Somewhere(dice, width);
            source = dice.Chance(90) ? from.Somewhere(dice, width) : null;
        }

        if (Claim(sink))
        {
            routes.Add(new Route { From = source, To = sink });
        }
    }

    private ValueList<InputSettings> Inputs() =>
        [
            .. rig.OfKind(PortKind.Input)
                .Where(group => group.Group.Phantom && dice.Chance(20))
                .Select(group => new InputSettings
                {
                    At = group.Somewhere(dice, 1),
                    Phantom = dice.Chance(50),
                    GainOwner = rig.Rig.Devices[0].Id,
                }),
        ];

    private ValueList<PointLabel> Labels() =>
        [
            .. rig.OfKind(PortKind.Sink, PortKind.Output)
                .Where(_ => dice.Chance(20))
                .Select(group => new PointLabel { At = group.Somewhere(dice, 1), Text = dice.Pick(["VOX", "Kick", "Ears 1"]) }),
        ];

    private bool Claim(PointRange sinks)
    {
        var points = Enumerable.Range(0, sinks.Width).Select(position => sinks[position]).ToArray();
        if (points.Any(claimed.Contains))
        {
            return false;
        }

        claimed.UnionWith(points);
        return true;
    }
}
