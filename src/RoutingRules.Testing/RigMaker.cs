using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Makes valid rigs: every reference resolves, links join free jacks, cables join free outputs to free inputs and close no loop.</summary>
internal sealed class RigMaker(Dice dice)
{
    private const string AudioNetwork = "audio";
    private readonly ProfileMaker profiles = new(dice);
    private readonly List<DeviceProfile> known = [];
    private readonly List<Device> devices = [];
    private readonly List<Link> links = [];
    private readonly List<Network> networks =
    [
        new()
        {
            Id = new(AudioNetwork),
            Transport = Transport.RtpL24,
            PacketMicroseconds = 1000,
        },
    ];
    private readonly List<Zone> zones = [];

    public Rig Make()
    {
        AddZones();
        AddNetworked();
        AddMulticore();
        var topology = dice.Roll(0, 3);
        if (topology > 0)
        {
            AddLinks(topology == 1, topology == 2);
        }

        AddOthers();
        var rig = new Rig
        {
            Zones = zones.ToValueList(),
            Networks = networks.ToValueList(),
            Devices = devices.ToValueList(),
            Links = links.ToValueList(),
            Profiles = known.ToValueList(),
        };
        rig = AddClock(rig);
        rig = rig with { Cables = new CableMaker(dice, new RigView(rig)).Valid() };
        return AddMarks(rig);
    }

    private void AddZones()
    {
        foreach (
            var (id, side) in new[] { ("stage-right", ZoneSide.HouseLeft), ("stage-left", ZoneSide.HouseRight), ("house", ZoneSide.None) }.Take(dice.Grow(0, 3))
        )
        {
            zones.Add(
                new Zone
                {
                    Id = new(id),
                    Side = side,
                    Walk = zones.Count + 1,
                }
            );
        }
    }

    private void AddNetworked()
    {
        Add("desk", profiles.Console, dice.Chance(20) ? 2 : 1);
        Add("box", profiles.Box, dice.Grow(0, 4));
        Add("recorder", profiles.Recorder, dice.Chance(15) ? 1 : 0);
    }

    private void AddOthers()
    {
        Add("processor", profiles.Processor, dice.Chance(30) ? dice.Grow(1, 2) : 0);
        Add("amp", profiles.Amplifier, dice.Chance(30) ? 1 : 0);
        Add("ears", profiles.TransmitterRack, dice.Chance(25) ? 1 : 0);
        Add("wireless", profiles.ReceiverRack, dice.Chance(20) ? 1 : 0);
        Add("split", profiles.Split, dice.Chance(15) ? 1 : 0);
        Add("selector", profiles.Selector, dice.Chance(15) ? 1 : 0);
    }

    private void Add(string name, Func<DeviceProfile> make, int count)
    {
        for (var i = 1; i <= count; i++)
        {
            var profile = i > 1 && dice.Chance(50) ? known[^1] : make();
            AddDevice(string.Create(CultureInfo.InvariantCulture, $"{name}-{i}"), profile);
        }
    }

    private Device AddDevice(string id, DeviceProfile profile)
    {
        if (!known.Contains(profile))
        {
            known.Add(profile);
        }

        var device = new Device
        {
            Id = new(id),
            Profile = profile.Id,
            Label = dice.Chance(40) ? $"The {id}" : null,
            Zone = zones.Count > 0 && dice.Chance(80) ? dice.Pick(zones).Id : null,
            Power = dice.Chance(40) ? [new(dice.Pick(["distro-1", "distro-2"]))] : [],
        };
        devices.Add(device);
        return device;
    }

    /// <summary>A chain, a ring (a chain whose ends meet) or a tree; devices whose jacks are not bridged come last, as leaves.</summary>
    private void AddLinks(bool isRing, bool isChain)
    {
        var free = devices
            .Select(device => (device.Id, Profile: known.First(profile => profile.Id == device.Profile)))
            .Where(device => Jacks(device.Profile) is not null)
            .OrderByDescending(device => IsBridged(device.Profile))
            .Select(device => (device.Id, Jacks: new Queue<int>(Enumerable.Range(1, IsBridged(device.Profile) ? Jacks(device.Profile)!.Count!.Value : 1))))
            .ToArray();
        for (var i = 1; i < free.Length; i++)
        {
            var parents = Enumerable.Range(0, i).Where(parent => free[parent].Jacks.Count > 0).ToArray();
            if (parents.Length == 0)
            {
                break;
            }

            Join(free[isRing || isChain ? parents[^1] : dice.Pick(parents)], free[i]);
        }

        if (isRing && free.Length > 2 && free[0].Jacks.Count > 0 && free[^1].Jacks.Count > 0)
        {
            networks[0] = networks[0] with { LoopControl = LoopControl.RingProtocol };
            Join(free[^1], free[0]);
        }

        void Join((Id<Device> Id, Queue<int> Jacks) from, (Id<Device> Id, Queue<int> Jacks) to) =>
            AddLink("link", AudioNetwork, Jack(from.Id, "net", from.Jacks.Dequeue()), Jack(to.Id, "net", to.Jacks.Dequeue()));
    }

    private void AddMulticore()
    {
        if (!dice.Chance(25))
        {
            return;
        }

        var slots = dice.Grow(1, 8);
        var bridge = AddDevice("bridge", profiles.MulticoreBridge(slots));
        var box = AddDevice("multicore-box", profiles.MulticoreBox(slots));
        networks.Add(new Network { Id = new("multicore"), Transport = Transport.PointToPoint });
        AddLink("multicore", "multicore", Jack(bridge.Id, "mc", 1), Jack(box.Id, "mc", 1));
    }

    private void AddLink(string name, string network, PointRange from, PointRange to) =>
        links.Add(
            new Link
            {
                Id = new(string.Create(CultureInfo.InvariantCulture, $"{name}-{dice.Roll(1, 9)}-{links.Count + 1}")),
                Network = new(network),
                From = from,
                To = to,
                Medium = Medium.CopperSolid,
                LengthMetres = dice.Roll(1, 90),
                SpeedMbps = 1000,
            }
        );

    private Rig AddClock(Rig rig)
    {
        if (!dice.Chance(60))
        {
            return rig;
        }

        var clock = new Clock
        {
            Id = new("word"),
            SampleRate = dice.Pick([48_000, 96_000]),
            Leader = devices[0].Id,
            Backup = devices.Count > 1 ? devices[1].Id : null,
        };
        return rig with { Clocks = [clock], Networks = [.. rig.Networks.Select(network => network with { Clock = clock.Id })] };
    }

    private Rig AddMarks(Rig rig)
    {
        var view = new RigView(rig);
        var sockets = view.OfKind(PortKind.Input, PortKind.Output).ToArray();
        if (sockets.Length == 0)
        {
            return rig;
        }

        return rig with
        {
            Unavailable = dice.Chance(20) ? [new() { At = dice.Pick(sockets).Somewhere(dice, 1), Reason = "crackles" }] : [],
            Reserved = dice.Chance(20) ? [new() { At = dice.Pick(sockets).Somewhere(dice, 1), Reason = "guest" }] : [],
        };
    }

    private static PointRange Jack(Id<Device> device, string group, int number) => new(device, new(group), number, number);

    private static PortGroup? Jacks(DeviceProfile profile) => profile.PortGroups.FirstOrDefault(group => group.Id.Value == "net");

    private static bool IsBridged(DeviceProfile profile) => Jacks(profile) is { Bridged.IsEmpty: false };
}
