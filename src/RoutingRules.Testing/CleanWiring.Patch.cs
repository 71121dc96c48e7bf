using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <content>Rig and patch, once everything has its number.</content>
internal sealed partial class CleanWiring
{
    /// <summary>Outputs and inputs of each box: what is used and two more, in whole blocks.</summary>
    private int Outputs(int box) => RoundUp(outputsUsed[box] + 2);

    private int Inputs(int box) => RoundUp(inputsUsed[box] + 2);

    private int RoundUp(int count) => (count + recipe.Block - 1) / recipe.Block * recipe.Block;

    private int FirstSlot(int box) => Enumerable.Range(0, box).Sum(before => RoundUp(outputsUsed[before])) + 1;

    private int FirstReceive(int box) => Enumerable.Range(0, box).Sum(before => RoundUp(inputsUsed[before])) + 1;

    private Rig BuildRig()
    {
        var boxes = Enumerable.Range(0, recipe.Boxes.Count).ToArray();
        var amplified = cables.Select(cable => cable.To.Device).Distinct().ToArray();
        return new Rig
        {
            Zones =
            [
                new()
                {
                    Id = ZoneOf(0),
                    Side = recipe.Boxes.Count > 1 ? ZoneSide.HouseLeft : ZoneSide.Centre,
                    Walk = 1,
                },
                .. boxes
                    .Skip(1)
                    .Select(box => new Zone
                    {
                        Id = ZoneOf(box),
                        Side = box == 1 ? ZoneSide.HouseRight : ZoneSide.Centre,
                        Walk = box + 1,
                    }),
                new()
                {
                    Id = new("house"),
                    Side = ZoneSide.None,
                    Walk = 9,
                },
            ],
            Clocks =
            [
                new()
                {
                    Id = new("word"),
                    SampleRate = 48_000,
                    Leader = new("desk"),
                    Backup = new(Box(0)),
                },
            ],
            Networks =
            [
                new()
                {
                    Id = new("audio"),
                    Transport = Transport.RtpL24,
                    PacketMicroseconds = 1000,
                    Clock = new("word"),
                },
            ],
            Devices =
            [
                new()
                {
                    Id = new("desk"),
                    Profile = new("clean/desk"),
                    Label = "Desk",
                    Zone = new("house"),
                    Power = [new("ups")],
                },
                .. boxes.Select(box => new Device
                {
                    Id = new(Box(box)),
                    Profile = new($"clean/{Box(box)}"),
                    Label = $"Box {box + 1}",
                    Zone = ZoneOf(box),
                    Power = [new($"distro-{box + 1}")],
                }),
                .. amplified.Select(amp => new Device
                {
                    Id = amp,
                    Profile = new("clean/amp"),
                    Zone = ZoneOf(amp.Value[^1] - '1'),
                    Power = [new($"distro-{amp.Value[^1]}")],
                }),
            ],
            Links = recipe.HasLinks ? [.. boxes.Select(Link)] : [],
            Cables = cables.ToValueList(),
            Profiles =
            [
                Desk(),
                .. boxes.Select(BoxProfile),
                .. amplified.Length > 0 ? [SmallProfiles.Amplifier with { Id = new("clean/amp") }] : Array.Empty<DeviceProfile>(),
            ],
        };
    }

    private static Link Link(int box) =>
        new()
        {
            Id = new(string.Create(CultureInfo.InvariantCulture, $"link-{box + 1}")),
            Network = new("audio"),
            From = At("desk", "net", box + 1, 1),
            To = At(Box(box), "net", 1, 1),
            Medium = Medium.CopperSolid,
            LengthMetres = 50,
            SpeedMbps = 1000,
        };

    private DeviceProfile Desk()
    {
        var aux = Math.Max(2, auxUsed);
        var channels = channelsUsed + 2;
        var transmit = FirstSlot(recipe.Boxes.Count) - 1 + recipe.Block;
        var receive = FirstReceive(recipe.Boxes.Count) - 1 + recipe.Block;
        return new DeviceProfile
        {
            Id = new("clean/desk"),
            Kind = DeviceKind.Console,
            Name = "Clean desk",
            PortGroups =
            [
                SmallProfiles.Group("aux", PortKind.Source, aux),
                SmallProfiles.Group("main", PortKind.Source, 2),
                SmallProfiles.Group("channel", PortKind.Sink, channels),
                SmallProfiles.Group("transmit", PortKind.Transmit, transmit) with
                {
                    BlockSize = recipe.Block,
                },
                SmallProfiles.Group("receive", PortKind.Receive, receive) with
                {
                    BlockSize = recipe.Block,
                },
                SmallProfiles.Network(4),
            ],
            Routing =
            [
                SmallProfiles.Entry("aux", "transmit", RoutingMode.Free),
                SmallProfiles.Entry("main", "transmit", RoutingMode.Free),
                SmallProfiles.Entry("receive", "channel", RoutingMode.Free),
            ],
            FactoryRoutes = recipe.HasFactory
                ?
                [
                    SmallProfiles.Factory("aux", 1, Math.Min(aux, transmit), "transmit", 1),
                    SmallProfiles.Factory("receive", 1, Math.Min(receive, channels), "channel", 1),
                ]
                : [],
            SampleRates = [48_000, 96_000],
        };
    }

    private DeviceProfile BoxProfile(int box)
    {
        var mode = recipe.Boxes[box] == BoxRouting.Free ? RoutingMode.Free : RoutingMode.Fixed;
        return new DeviceProfile
        {
            Id = new($"clean/{Box(box)}"),
            Kind = DeviceKind.StageBox,
            Name = "Clean box",
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, Inputs(box)) with
                {
                    Level = SignalLevel.Mic,
                    Phantom = true,
                },
                SmallProfiles.Group("out", PortKind.Output, Outputs(box)) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("transmit", PortKind.Transmit, Inputs(box)) with
                {
                    BlockSize = recipe.Block,
                },
                SmallProfiles.Group("receive", PortKind.Receive, Outputs(box)) with
                {
                    BlockSize = recipe.Block,
                },
                SmallProfiles.Network(2),
            ],
            Routing =
            [
                SmallProfiles.Entry("in", "transmit", mode),
                SmallProfiles.Entry("receive", "out", mode) with
                {
                    Clearable = recipe.Boxes[box] == BoxRouting.Clearable,
                },
            ],
            SampleRates = [48_000, 96_000],
        };
    }

    private Patch BuildPatch()
    {
        var streams = new List<AudioStream>();
        var routes = new List<Route>();
        for (var box = 0; box < recipe.Boxes.Count; box++)
        {
            AddStreams(streams, RoundUp(outputsUsed[box]), "desk", FirstSlot(box), Box(box), 1);
            AddStreams(streams, RoundUp(inputsUsed[box]), Box(box), 1, "desk", FirstReceive(box));
            AddBoxRoutes(routes, box);
        }

        AddDeskRoutes(routes);
        return new Patch
        {
            Streams = streams.ToValueList(),
            Routes = routes.ToValueList(),
            Inputs = inputs.ToValueList(),
            Labels = labels.ToValueList(),
        };
    }

    private void AddStreams(List<AudioStream> streams, int slots, string sender, int first, string receiver, int firstReceive)
    {
        for (var offset = 0; offset < slots; offset += recipe.Block)
        {
            streams.Add(
                new AudioStream
                {
                    Id = new(string.Create(CultureInfo.InvariantCulture, $"s{streams.Count + 1}")),
                    Network = new("audio"),
                    From = At(sender, "transmit", first + offset, recipe.Block),
                    To = [new() { At = At(receiver, "receive", firstReceive + offset, recipe.Block) }],
                }
            );
        }
    }

    private void AddBoxRoutes(List<Route> routes, int box)
    {
        if (recipe.Boxes[box] != BoxRouting.Free)
        {
            return;
        }

        routes.AddRange(
            carried
                .Keys.Where(output => output.Box == box)
                .Select(output => new Route { From = At(Box(box), "receive", output.Number, 1), To = At(Box(box), "out", output.Number, 1) })
        );
        routes.AddRange(
            channelOf
                .Keys.Where(input => input.Box == box)
                .Select(input => new Route { From = At(Box(box), "in", input.Number, 1), To = At(Box(box), "transmit", input.Number, 1) })
        );
    }

    private void AddDeskRoutes(List<Route> routes)
    {
        var slots = carried.ToDictionary(entry => FirstSlot(entry.Key.Box) + entry.Key.Number - 1, entry => entry.Value);
        for (var slot = 1; slot < FirstSlot(recipe.Boxes.Count); slot++)
        {
            AddRoute(routes, slots.TryGetValue(slot, out var source) ? One(source) : null, "transmit", slot);
        }

        var channels = channelOf.ToDictionary(entry => entry.Value, entry => FirstReceive(entry.Key.Box) + entry.Key.Number - 1);
        for (var channel = 1; channel <= channelsUsed + 2; channel++)
        {
            AddRoute(routes, channels.TryGetValue(channel, out var slot) ? At("desk", "receive", slot, 1) : null, "channel", channel);
        }
    }

    /// <summary>A route; a null one only where a factory route could speak otherwise.</summary>
    private void AddRoute(List<Route> routes, PointRange? from, string group, int number)
    {
        if (from is not null || recipe.HasFactory)
        {
            routes.Add(new Route { From = from, To = At("desk", group, number, 1) });
        }
    }
}
