using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.External;

/// <summary>
/// Network paths against all-pairs shortest paths. Source: R. W. Floyd, "Algorithm 97: Shortest Path", Communications of the ACM 5 (1962) 345 (from memory).
/// </summary>
public sealed class NetworkPathTests
{
    private const int Far = 1_000_000;

    [Property(MaxTest = Promise.Cases)]
    public Property Paths_are_as_short_as_shortest_paths_and_hang_together() =>
        Prop.ForAll(
            Networks(),
            rig =>
            {
                var show = Promise.Resolve(new Show { Title = "t", Rig = rig });
                var switches = Switches(rig);
                var distance = Distances(rig, switches);
                foreach (var from in show.Devices)
                {
                    foreach (var to in show.Devices)
                    {
                        var path = show.Network.Path(0, from, to);
                        var shortest = Shortest(distance, switches, from.Id, to.Id);
                        Assert.True(path is null == shortest >= Far, $"{from.Id} to {to.Id}: path {(path is null ? "none" : path.Count)}, shortest {shortest}");
                        if (path is not null)
                        {
                            Assert.Equal(shortest, path.Count);
                            AssertHangsTogether(rig, switches, from.Id, to.Id, path);
                        }
                    }
                }
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property The_order_in_which_links_are_listed_does_not_matter() =>
        Prop.ForAll(
            Networks(),
            rig =>
            {
                var forward = Promise.Resolve(new Show { Title = "t", Rig = rig });
                var backward = Promise.Resolve(new Show { Title = "t", Rig = rig with { Links = rig.Links.Reverse().ToValueList() } });
                for (var from = 0; from < forward.Devices.Count; from++)
                {
                    for (var to = 0; to < forward.Devices.Count; to++)
                    {
                        var ids = forward.Network.Path(0, forward.Devices[from], forward.Devices[to])?.Select(link => forward.Links[link].Model.Id.Value);
                        var others = backward
                            .Network.Path(0, backward.Devices[from], backward.Devices[to])
                            ?.Select(link => backward.Links[link].Model.Id.Value);
                        Assert.Equal(ids, others);
                    }
                }
            }
        );

    /// <summary>Switches of 4 jacks, some bridged in two halves, joined by any links, also double ones and rings; at least one link.</summary>
    private static Arbitrary<Rig> Networks() =>
        Arb.From(
            from count in Gen.Choose(2, 7)
            from halves in Gen.Elements(true, false, false).ArrayOf(count)
            from ends in Gen.Choose(0, (count * 4) - 1).ArrayOf(24)
            from taken in Gen.Choose(1, 12)
            select Build(halves, ends, taken),
            rig =>
                Enumerable
                    .Range(0, rig.Links.Count)
                    .Where(_ => rig.Links.Count > 1)
                    .Select(i => rig with { Links = [.. rig.Links.AsSpan()[..i], .. rig.Links.AsSpan()[(i + 1)..]] })
        );

    private static Rig Build(bool[] halves, int[] ends, int taken)
    {
        var whole = new DeviceProfile
        {
            Id = new("made/whole"),
            Kind = DeviceKind.Switch,
            Name = "Whole",
            PortGroups = [SmallProfiles.Network(4)],
        };
        var half = whole with
        {
            Id = new("made/half"),
            PortGroups = [SmallProfiles.Group("net", PortKind.Network, 4) with { Bridged = [new() { Jacks = new(1, 2) }, new() { Jacks = new(3, 4) }] }],
        };
        var links = new List<Link>();
        for (var i = 0; i + 1 < ends.Length && links.Count < taken; i += 2)
        {
            if (ends[i] / 4 != ends[i + 1] / 4)
            {
                links.Add(
                    new Link
                    {
                        Id = new($"l{ends[i] * 7 % 10}-{i}"),
                        Network = new("n"),
                        From = Jack(ends[i]),
                        To = Jack(ends[i + 1]),
                    }
                );
            }
        }

        if (links.Count == 0)
        {
            links.Add(
                new Link
                {
                    Id = new("l"),
                    Network = new("n"),
                    From = Jack(0),
                    To = Jack(4),
                }
            );
        }

        return new Rig
        {
            Networks = [new() { Id = new("n"), Transport = Transport.RtpL24 }],
            Devices = [.. halves.Select((isHalf, i) => new Device { Id = new($"d{i}"), Profile = isHalf ? half.Id : whole.Id })],
            Profiles = [whole, half],
            Links = links.ToValueList(),
        };
    }

    private static PointRange Jack(int end) => new(new($"d{end / 4}"), new("net"), (end % 4) + 1, (end % 4) + 1);

    /// <summary>One node for each set of bridged jacks: (device, 0) and, when in halves, (device, 1).</summary>
    private static List<(string Device, int Half)> Switches(Rig rig) =>
        [.. rig.Devices.SelectMany(device => Enumerable.Range(0, device.Profile.Value == "made/half" ? 2 : 1).Select(half => (device.Id.Value, half)))];

    private static int Node(Rig rig, List<(string Device, int Half)> switches, PointRange jack)
    {
        var isHalved = rig.Devices.First(device => device.Id == jack.Device).Profile.Value == "made/half";
        return switches.IndexOf((jack.Device.Value, isHalved && jack.First > 2 ? 1 : 0));
    }

    private static int[,] Distances(Rig rig, List<(string Device, int Half)> switches)
    {
        var n = switches.Count;
        var distance = new int[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                distance[i, j] = i == j ? 0 : Far;
            }
        }

        foreach (var link in rig.Links)
        {
            var (a, b) = (Node(rig, switches, link.From), Node(rig, switches, link.To));
            distance[a, b] = distance[b, a] = 1;
        }

        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    distance[i, j] = Math.Min(distance[i, j], distance[i, k] + distance[k, j]);
                }
            }
        }

        return distance;
    }

    /// <summary>From any half to any half; a device is on the network only by a link, so an unlinked one reaches nobody, not even itself.</summary>
    private static int Shortest(int[,] distance, List<(string Device, int Half)> switches, Id<Device> from, Id<Device> to)
    {
        var best = Far;
        for (var i = 0; i < switches.Count; i++)
        {
            for (var j = 0; j < switches.Count; j++)
            {
                var isLinked = Enumerable.Range(0, switches.Count).Any(k => k != i && distance[i, k] < Far);
                if (switches[i].Device == from.Value && switches[j].Device == to.Value && isLinked)
                {
                    best = Math.Min(best, distance[i, j]);
                }
            }
        }

        return best;
    }

    private static void AssertHangsTogether(Rig rig, List<(string Device, int Half)> switches, Id<Device> from, Id<Device> to, IReadOnlyList<int> path)
    {
        var at = Enumerable.Range(0, switches.Count).Where(node => switches[node].Device == from.Value).ToHashSet();
        foreach (var index in path)
        {
            var (a, b) = (Node(rig, switches, rig.Links[index].From), Node(rig, switches, rig.Links[index].To));
            at = [.. at.Contains(a) ? [b] : Array.Empty<int>(), .. at.Contains(b) ? [a] : Array.Empty<int>()];
        }

        Assert.Contains(at, node => switches[node].Device == to.Value);
    }
}
