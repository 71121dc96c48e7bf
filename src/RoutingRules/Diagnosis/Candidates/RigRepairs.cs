using System.Globalization;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of clocks, networks and links.</summary>
internal static class RigRepairs
{
    private static readonly int[] UsualRates = [48_000, 96_000, 44_100];
    private static readonly int[] UsualPackets = [1_000, 125];

    public static List<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        var found = new List<OtherRepair>();
        if (finding.Rule.StartsWith("RR5", StringComparison.Ordinal) || finding.Rule is "RR4009" or "RR1103")
        {
            if (finding.Rule == "RR5001")
            {
                AddLinks(show, found);
            }

            AddRates(show, found);
            AddPackets(show, found);
            AddSpeeds(show, found);
        }

        return found;
    }

    /// <summary>A link between free jacks of each two devices that a stream shall join and no path does.</summary>
    private static void AddLinks(ResolvedShow show, List<OtherRepair> found)
    {
        var tried = new HashSet<(PointIndex, PointIndex)>();
        foreach (var stream in show.Streams)
        {
            var network = show.Network.IndexOf(stream.Model.Network);
            foreach (var receiver in stream.Receivers)
            {
                if (
                    network < 0
                    || stream.From.IsNone
                    || receiver.At.IsNone
                    || show.Network.Path(network, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At)) is not null
                )
                {
                    continue;
                }

                foreach (var (one, other) in Jacks(show, network, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At)))
                {
                    if (tried.Add((one, other)))
                    {
                        AddLink(show, found, stream.Model.Network, one, other);
                    }
                }
            }
        }
    }

    private static void AddLink(ResolvedShow show, List<OtherRepair> found, Id<Network> network, PointIndex one, PointIndex other)
    {
        var links = show.Document.Rig.Links;
        var graph = show.Graph;
        var number = 1;
        while (links.Any(link => link.Id.Value == $"link-{Number(number)}"))
        {
            number++;
        }

        var added = new Link
        {
            Id = new Id<Link>($"link-{Number(number)}"),
            Network = network,
            From = graph.Address(one, 1),
            To = graph.Address(other, 1),
            SpeedMbps = links.Max(link => link.SpeedMbps),
        };
        found.Add(
            new OtherRepair(
                $"No link joins {graph.DeviceOf(one).DisplayName} and {graph.DeviceOf(other).DisplayName}: a network cable is unplugged or not written down",
                Fix.Of(
                    $"Plug a network cable from {added.From} to {added.To}",
                    FixSafety.Unsafe,
                    [ShowEdit.Insert(ShowLists.Links, links.Count, added)],
                    "Turn everything down first: what arrives over the link comes back at once."
                )
            )
        );
    }

    /// <summary>Free jacks of devices of the two sides of a network: those of the ends first.</summary>
    private static IEnumerable<(PointIndex One, PointIndex Other)> Jacks(ResolvedShow show, int network, DeviceNode sender, DeviceNode receiver)
    {
        var near = show
            .Devices.Where(device => device == sender || show.Network.Path(network, sender, device) is not null)
            .OrderBy(device => device != sender)
            .ToList();
        var far = show
            .Devices.Where(device => device == receiver || show.Network.Path(network, receiver, device) is not null)
            .OrderBy(device => device != receiver)
            .ToList();
        foreach (var one in near)
        {
            foreach (var other in far)
            {
                if (FreeJack(show, one) is { IsNone: false } first && FreeJack(show, other) is { IsNone: false } second)
                {
                    yield return (first, second);
                }
            }
        }
    }

    private static PointIndex FreeJack(ResolvedShow show, DeviceNode device)
    {
        foreach (var group in device.Groups)
        {
            for (var i = 0; group.Kind == PortKind.Network && i < group.Count; i++)
            {
                var jack = device.First(group) + i;
                var isCarrier = false;
                foreach (var other in device.Groups)
                {
                    isCarrier |= other.Model.Carrier is { } carrier && carrier.Group == group.Id && carrier.First <= i + 1 && i + 1 <= carrier.Last;
                }

                if (!isCarrier && !show.Links.Any(link => link.From == jack || link.To == jack))
                {
                    return jack;
                }
            }
        }

        return PointIndex.None;
    }

    private static void AddRates(ResolvedShow show, List<OtherRepair> found)
    {
        var clocks = show.Document.Rig.Clocks;
        for (var i = 0; i < clocks.Count; i++)
        {
            foreach (var rate in clocks.Select(clock => clock.SampleRate).Concat(UsualRates).Distinct())
            {
                if (rate != clocks[i].SampleRate)
                {
                    found.Add(
                        new OtherRepair(
                            $"Clock '{clocks[i].Id}' runs at {Number(clocks[i].SampleRate)} Hz instead of {Number(rate)} Hz",
                            Fix.Of(
                                $"Set clock '{clocks[i].Id}' to {Number(rate)} Hz",
                                FixSafety.Unsafe,
                                [ShowEdit.Replace(ShowLists.Clocks, i, clocks[i], clocks[i] with { SampleRate = rate })],
                                "Turn everything down first: a change of rate interrupts every stream."
                            )
                        )
                    );
                }
            }
        }
    }

    private static void AddPackets(ResolvedShow show, List<OtherRepair> found)
    {
        var networks = show.Document.Rig.Networks;
        for (var i = 0; i < networks.Count; i++)
        {
            foreach (
                var time in networks
                    .Where(other => other.Transport == networks[i].Transport)
                    .Select(other => other.PacketMicroseconds)
                    .OfType<int>()
                    .Concat(UsualPackets)
                    .Distinct()
            )
            {
                if (networks[i].PacketMicroseconds is { } now && now != time)
                {
                    found.Add(
                        new OtherRepair(
                            $"Network '{networks[i].Id}' sends packets of {Number(now)} µs instead of {Number(time)} µs",
                            Fix.Of(
                                $"Set the packet time of network '{networks[i].Id}' to {Number(time)} µs",
                                FixSafety.Unsafe,
                                [ShowEdit.Replace(ShowLists.Networks, i, networks[i], networks[i] with { PacketMicroseconds = time })],
                                "Turn everything down first: a change of packet time interrupts every stream."
                            )
                        )
                    );
                }
            }
        }
    }

    private static void AddSpeeds(ResolvedShow show, List<OtherRepair> found)
    {
        var links = show.Document.Rig.Links;
        var fastest = links.Max(link => link.SpeedMbps) is { } most && most > 1_000 ? most : 1_000;
        for (var i = 0; i < links.Count; i++)
        {
            if (links[i].SpeedMbps is { } speed && speed < fastest)
            {
                found.Add(
                    new OtherRepair(
                        $"Link '{links[i].Id}' is too slow: it runs at {Number(speed)} Mbit/s",
                        Fix.Of(
                            $"Bring link '{links[i].Id}' to {Number(fastest)} Mbit/s",
                            FixSafety.Unsafe,
                            [ShowEdit.Replace(ShowLists.Links, i, links[i], links[i] with { SpeedMbps = fastest })],
                            "Look at the cable and both jacks: the speed in the show changes nothing at the rig."
                        )
                    )
                );
            }
        }
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
