using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Profiles;

public class GenericProfileContentTests
{
    public static TheoryData<string> Ids => ProfilePack.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_profile_reads_without_a_finding_and_carries_the_id_it_is_found_by(string id)
    {
        Assert.True(new GenericProfiles().TryFind(new Id<DeviceProfile>(id), out var json));
        var result = ProfileReader.Read(json.Span);

        Assert.Empty(result.Findings.Select(finding => finding.Message));
        Assert.Equal(id, result.Value!.Id.Value);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_profile_is_sound_at_each_of_its_sample_rates(string id)
    {
        var profile = ProfilePack.Get(id);
        foreach (var rate in profile.SampleRates.DefaultIfEmpty(48_000))
        {
            Assert.Empty(ProfileCompiler.Compile(profile, rate).Problems.Select(problem => problem.Message));
        }
    }

    [Fact]
    public void Factory_routes_stay_inside_their_groups_and_are_allowed_by_the_routing()
    {
        Assert.All(
            ProfilePack.All,
            profile =>
                Assert.All(
                    profile.FactoryRoutes,
                    route =>
                    {
                        Assert.InRange(route.From.Last, 1, profile.PortGroups.Single(group => group.Id == route.From.Group).Largest());
                        Assert.InRange(route.To.Last, 1, profile.PortGroups.Single(group => group.Id == route.To.Group).Largest());
                        Assert.Equal(route.From.Width, route.To.Width);
                        Assert.Contains(
                            profile.Routing,
                            entry => entry.From == route.From.Group && entry.To == route.To.Group && entry.Mode != RoutingMode.Fixed
                        );
                    }
                )
        );
    }

    [Fact]
    public void A_block_routed_factory_route_moves_whole_blocks()
    {
        var checkedRoutes = 0;
        foreach (var profile in ProfilePack.All)
        {
            foreach (var route in profile.FactoryRoutes)
            {
                var routing = profile.Routing.Single(entry => entry.From == route.From.Group && entry.To == route.To.Group);
                if (routing is { Mode: RoutingMode.Block, BlockSize: { } size })
                {
                    Assert.Equal(0, (route.From.First - 1) % size);
                    Assert.Equal(0, route.From.Width % size);
                    checkedRoutes++;
                }
            }
        }

        Assert.True(checkedRoutes > 0);
    }

    [Fact]
    public void Slots_stand_in_whole_blocks_and_no_device_promises_more_streams_than_it_has_blocks()
    {
        Assert.All(
            ProfilePack.All,
            profile =>
            {
                Assert.All(profile.PortGroups.Where(group => group.BlockSize is not null), group => Assert.Equal(0, group.Largest() % group.BlockSize!.Value));
                Assert.InRange(profile.Limits?.StreamsSent ?? 0, 0, Blocks(profile, PortKind.Transmit));
                Assert.InRange(profile.Limits?.StreamsReceived ?? 0, 0, Blocks(profile, PortKind.Receive));
            }
        );
    }

    [Fact]
    public void Every_console_and_every_other_network_device_can_hear_each_other()
    {
        // A receiver takes a whole part of a stream, so its block size must divide the sender's.
        var senders = ProfilePack.Groups(PortKind.Transmit).Where(entry => entry.Group.Carrier is null).ToArray();
        var receivers = ProfilePack.Groups(PortKind.Receive).Where(entry => entry.Group.Carrier is null).ToArray();
        Assert.NotEmpty(senders);
        foreach (var (sender, transmit) in senders)
        {
            foreach (var (receiver, receive) in receivers)
            {
                if (sender.Kind == DeviceKind.Console || receiver.Kind == DeviceKind.Console)
                {
                    Assert.True(transmit.BlockSize % receive.BlockSize == 0, $"{receiver.Id} cannot take streams of {sender.Id}");
                }
            }
        }
    }

    [Fact]
    public void Panel_labels_name_each_point_once()
    {
        var labelled = ProfilePack.All.SelectMany(profile => profile.PortGroups).Where(group => !group.PanelLabels.IsEmpty).ToArray();

        Assert.NotEmpty(labelled);
        Assert.All(
            labelled,
            group =>
            {
                Assert.Equal(group.Count, group.PanelLabels.Count);
                Assert.Equal(group.PanelLabels.Count, group.PanelLabels.Distinct().Count());
            }
        );
    }

    [Fact]
    public void Each_port_group_and_latency_is_named_once_and_latencies_are_credible()
    {
        Assert.All(
            ProfilePack.All,
            profile =>
            {
                Assert.Equal(profile.PortGroups.Count, profile.PortGroups.Select(group => group.Id).Distinct().Count());
                Assert.Equal(profile.LatencyMilliseconds.Count, profile.LatencyMilliseconds.Select(entry => entry.Group).Distinct().Count());
                Assert.All(profile.LatencyMilliseconds, entry => Assert.InRange(entry.Value, 0.05, 10));
            }
        );
    }

    [Fact]
    public void Every_routing_mode_and_every_way_through_a_device_has_an_example()
    {
        Assert.Equal(Enum.GetValues<RoutingMode>(), ProfilePack.All.SelectMany(profile => profile.Routing).Select(entry => entry.Mode).Distinct().Order());
        Assert.Equal(Enum.GetValues<ThroughKind>(), ProfilePack.All.SelectMany(profile => profile.Through).Select(entry => entry.Kind).Distinct().Order());
        Assert.Equal(Enum.GetValues<PortKind>(), ProfilePack.All.SelectMany(profile => profile.PortGroups).Select(group => group.Kind).Distinct().Order());
    }

    private static int Blocks(DeviceProfile profile, PortKind kind) =>
        profile.PortGroups.Where(group => group.Kind == kind && group.Carrier is null).Sum(group => group.Largest() / (group.BlockSize ?? 1));
}
