using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using QuikGraph;
using QuikGraph.Algorithms.ConnectedComponents;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.External;

/// <summary>Bridges and articulation points against a general graph library (QuikGraph 2.5): what is parted when a link or a device is taken out.</summary>
public sealed class NetworkFailureTests
{
    [Property(MaxTest = Promise.Cases)]
    public Property A_link_is_a_bridge_when_taking_it_out_makes_one_part_more() =>
        Prop.ForAll(
            Rigs(),
            rig =>
            {
                var show = Promise.Resolve(new Show { Title = "t", Rig = rig });
                var cuts = Cuts(show);
                var parts = Parts(show, -1, -1, out _);
                foreach (var link in show.Links)
                {
                    Assert.Equal(Parts(show, link.Index, -1, out _) > parts, cuts.IsBridge(link.Index));
                }
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Only_ways_are_those_whose_loss_parts_two_devices() =>
        Prop.ForAll(
            Rigs(),
            rig =>
            {
                var show = Promise.Resolve(new Show { Title = "t", Rig = rig });
                var cuts = Cuts(show);
                foreach (var from in show.Devices)
                {
                    foreach (var to in show.Devices)
                    {
                        Parts(show, -1, -1, out var whole);
                        if (from == to || !whole(from, to))
                        {
                            continue;
                        }

                        var links = new List<int>();
                        var devices = new List<int>();
                        cuts.Collect(from, to, links.Add, devices.Add);
                        Assert.Equal(show.Links.Where(link => IsParted(show, link.Index, -1, from, to)).Select(link => link.Index), links.Distinct().Order());
                        Assert.Equal(
                            show.Devices.Where(device => device != from && device != to && IsParted(show, -1, device.Index, from, to))
                                .Select(device => device.Index),
                            devices.Distinct().Order()
                        );
                    }
                }
            }
        );

    private static NetworkCuts Cuts(ResolvedShow show) => new(show.Network, 0, show.Links.Count, show.Devices);

    private static bool IsParted(ResolvedShow show, int withoutLink, int withoutDevice, DeviceNode from, DeviceNode to)
    {
        Parts(show, withoutLink, withoutDevice, out var joined);
        return !joined(from, to);
    }

    /// <summary>The parts of the switch graph, without one link or one device, and whether two devices share a part at any of their switches.</summary>
    private static int Parts(ResolvedShow show, int withoutLink, int withoutDevice, out Func<DeviceNode, DeviceNode, bool> joined)
    {
        var graph = new UndirectedGraph<(string Device, int Half), TaggedUndirectedEdge<(string Device, int Half), int>>(true);
        foreach (var device in show.Devices.Where(device => device.Index != withoutDevice))
        {
            graph.AddVertexRange(Switches(device));
        }

        foreach (var link in show.Links.Where(link => link.Index != withoutLink))
        {
            var (a, b) = (Switch(show, link.Model.From), Switch(show, link.Model.To));
            if (graph.ContainsVertex(a) && graph.ContainsVertex(b))
            {
                // The library wants the ends in order.
                graph.AddEdge(a.CompareTo(b) <= 0 ? new(a, b, link.Index) : new(b, a, link.Index));
            }
        }

        var search = new ConnectedComponentsAlgorithm<(string Device, int Half), TaggedUndirectedEdge<(string Device, int Half), int>>(graph);
        search.Compute();
        joined = (from, to) => Switches(from).Any(a => Switches(to).Any(b => search.Components[a] == search.Components[b]));
        return search.ComponentCount;
    }

    private static bool IsHalved(DeviceNode device) => device.Profile.Id.Value == "made/half";

    private static IEnumerable<(string Device, int Half)> Switches(DeviceNode device) =>
        Enumerable.Range(0, IsHalved(device) ? 2 : 1).Select(half => (device.Id.Value, half));

    private static (string Device, int Half) Switch(ResolvedShow show, PointRange jack) =>
        (jack.Device.Value, IsHalved(show.Devices.First(device => device.Id == jack.Device)) && jack.First > 3 ? 1 : 0);

    /// <summary>Switches of 6 jacks, some bridged in two halves, joined by any links, also double ones and rings; at least one link.</summary>
    private static Arbitrary<Rig> Rigs() =>
        Arb.From(
            from count in Gen.Choose(2, 7)
            from halves in Gen.Elements(true, false, false, false).ArrayOf(count)
            from ends in Gen.Choose(0, (count * 6) - 1).ArrayOf(28)
            from taken in Gen.Choose(1, 14)
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
            PortGroups = [SmallProfiles.Network(6)],
        };
        var half = whole with
        {
            Id = new("made/half"),
            PortGroups = [SmallProfiles.Group("net", PortKind.Network, 6) with { Bridged = [new() { Jacks = new(1, 3) }, new() { Jacks = new(4, 6) }] }],
        };
        var links = new List<Link>();
        for (var i = 0; i + 1 < ends.Length && links.Count < taken; i += 2)
        {
            if (ends[i] / 6 != ends[i + 1] / 6)
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
                    To = Jack(6),
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

    private static PointRange Jack(int end) => new(new($"d{end / 6}"), new("net"), (end % 6) + 1, (end % 6) + 1);
}
