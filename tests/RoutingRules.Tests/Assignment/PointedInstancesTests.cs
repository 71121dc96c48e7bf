using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallProfiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>What the search claims, compared with trying everything on tiny shows of the kinds that are hardest to claim something about.</summary>
[Trait("Speed", "slow")]
public class PointedInstancesTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Fact]
    public void Beside_pins_at_low_numbers_of_free_boxes_the_engine_finds_and_proves_what_trying_everything_finds() =>
        Assert.Equal([], Seeds(0, 150).Append(6152).Select(PointedInstances.FreePins).SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny)));

    [Fact]
    public void Around_pairs_that_are_served_already_the_engine_finds_and_proves_what_trying_everything_finds() =>
        Assert.Equal(
            [],
            Seeds(300, 450).Concat([703504, 5008827, 41000272]).Select(PointedInstances.KeptPairs).SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny))
        );

    [Fact]
    public void Contradicting_pins_are_a_smallest_set_and_the_rest_is_the_best_there_is()
    {
        var met = 0;
        foreach (var tiny in Seeds(0, 120).Concat([832, 1241, 1260, 1659, 2059, 2784, 3556, 4141, 4444, 7019]).Select(PointedInstances.Contradictions))
        {
            Assert.Equal([], TinyAgreement.Wrong(Engine, tiny));
            var result = Engine.Assign(tiny.Show, tiny.Options);
            if (result.Status != AssignmentStatus.PinsContradict)
                continue;

            met++;
            var left = result.Contradictions.SelectMany(set => set).ToList();
            var facts = new AssignmentFacts(tiny.Show, tiny.Options, _ => null);
            var check = new ResultCheck(
                facts,
                result.Show,
                [.. facts.Demands.Select(demand => result.Placements.FirstOrDefault(place => place.Demand == demand.Key)?.At)],
                left
            );
            check.Run();
            Assert.Equal(
                (tiny.ToString(), null, BruteForce.SolveWithout(tiny.Show, tiny.Options, left).Vector),
                (tiny.ToString(), result.Objective, check.Vector)
            );
        }

        Assert.InRange(met, 50, 130);
    }

    [Fact]
    public void With_routing_in_blocks_nothing_is_claimed_that_trying_every_offset_refutes()
    {
        var (better, proven) = (0, 0);
        foreach (var tiny in Seeds(0, 300).Append(744).Select(PointedInstances.Blocks))
        {
            var result = Engine.Assign(tiny.Show, tiny.Options);
            Assert.Equal([], AssignmentVerifier.Verify(tiny.Show, result, tiny.Options, _ => null).Problems.Select(problem => $"{tiny}: {problem}"));
            if (result.ProvenNumbers > 0 || result.Status != AssignmentStatus.Feasible)
            {
                proven++;
                Assert.Equal([], TinyAgreement.Wrong(Engine, tiny));
                continue;
            }

            Assert.Contains(result.Notes, note => note.Contains("was not tried", StringComparison.Ordinal));
            better += BruteForce.Solve(tiny.Show, tiny.Options).Vector != result.Objective ? 1 : 0;
        }

        // Both halves are met: shows where offsets matter, and shows whose blocks leave no choice.
        Assert.InRange(better, 50, 301);
        Assert.InRange(proven, 15, 301);
    }

    [Fact]
    public void A_number_after_a_pin_comes_before_a_lower_one_that_opposes_the_list()
    {
        // y/out/1 stands before the pin of the feed before it: one pair against the list. y/out/3 and z/out/1 do not; the first of them needs no block more.
        var show = TwoBoxes(RoutingMode.Free, 3, [Feed("a", 1, "y", 2), Feed("b", 2)]);

        var result = Engine.Assign(show, new AssignmentOptions());

        Assert.Equal("y/out/3", result.Placements.Single(place => place.Demand == "b/1").At.ToString());
        Assert.Equal(AssignmentStatus.Optimal, result.Status);
        Assert.Equal("0 0 0 0 | 0 0 | 0 0 0 0 0 1 1 5", result.Objective!.ToString());
    }

    [Fact]
    public void Of_three_pins_of_which_any_two_contradict_two_are_named()
    {
        // One fixed block of four outputs that cannot be silenced takes one stream of one console; each console has a feed there.
        var desks = Enumerable.Range(1, 3).Select(i => Desk($"desk-{i}", RoutingMode.Free)).ToList();
        var box = Box("y", RoutingMode.Fixed, 4) with { Limits = new() { StreamsReceived = 1 } };
        var feeds = Enumerable.Range(1, 3).Select(i => Feed($"feed-{i}", 1, "y", i) with { Source = new PointRange(new($"desk-{i}"), new("aux"), 1, 1) });
        var show = Show([.. desks, box], [.. feeds]);

        var result = Engine.Assign(show, new AssignmentOptions());

        Assert.Equal(AssignmentStatus.PinsContradict, result.Status);
        Assert.Equal([2], result.Contradictions.Select(set => set.Count));
        Assert.Single(result.Placements);
    }

    [Fact]
    public void A_held_feed_stays_where_a_block_from_other_numbers_brings_it_and_nothing_is_claimed()
    {
        var show = TwoBoxes(RoutingMode.Block, 4, [Feed("a", 1) with { Hold = true }]) with
        {
            Patch = new Patch
            {
                Streams =
                [
                    new()
                    {
                        Id = new("s"),
                        Network = new("net"),
                        From = Range("desk", "transmit", 1, 4),
                        To = [new() { At = Range("y", "receive", 1, 4) }],
                    },
                ],
                Routes =
                [
                    new() { From = Range("desk", "aux", 1, 1), To = Range("desk", "transmit", 3, 3) },
                    new() { From = Range("y", "receive", 3, 4), To = Range("y", "out", 1, 2) },
                ],
            },
        };

        var result = Engine.Assign(show, new AssignmentOptions());

        Assert.Equal("y/out/1", result.Placements.Single().At.ToString());
        Assert.Empty(result.Moved);
        Assert.Equal((AssignmentStatus.Feasible, 0), (result.Status, result.ProvenNumbers));
        Assert.Contains("Blocks of channels were routed inside y, z only as they are patched now", result.Notes.Single(), StringComparison.Ordinal);
    }

    private static IEnumerable<int> Seeds(int from, int to) => Enumerable.Range(from, to - from);

    private static Show TwoBoxes(RoutingMode mode, int outs, ValueList<Feed> feeds) =>
        Show([Desk("desk", RoutingMode.Free), Box("y", mode, outs), Box("z", mode, outs)], feeds);

    private static DeviceProfile Desk(string id, RoutingMode mode) =>
        Make(
            id,
            DeviceKind.Console,
            [Group("aux", PortKind.Source, 4), Group("transmit", PortKind.Transmit, 4) with { BlockSize = 4 }, Network(2)],
            Entry("aux", "transmit", mode)
        );

    private static DeviceProfile Box(string id, RoutingMode mode, int outs) =>
        Make(
            id,
            DeviceKind.StageBox,
            [Group("out", PortKind.Output, outs) with { Level = SignalLevel.Line }, Group("receive", PortKind.Receive, 4) with { BlockSize = 4 }, Network(2)],
            Entry("receive", "out", mode) with
            {
                BlockSize = mode == RoutingMode.Block ? 2 : null,
            }
        );

    private static DeviceProfile Make(string id, DeviceKind kind, ValueList<PortGroup> groups, RoutingEntry entry) =>
        new()
        {
            Id = new($"small/{id}"),
            Kind = kind,
            Name = "Small device",
            PortGroups = groups,
            Routing = [entry],
        };

    private static Feed Feed(string id, int aux, string? box = null, int number = 0) =>
        new()
        {
            Id = new(id),
            Role = FeedRole.Monitor,
            Source = new PointRange(new("desk"), new("aux"), aux, aux),
            To = [box is null ? new Destination { Devices = [new("y"), new("z")] } : new Destination { At = Range(box, "out", number, number) }],
        };

    private static PointRange Range(string device, string group, int first, int last) => new(new(device), new(group), first, last);

    private static Show Show(ValueList<DeviceProfile> profiles, ValueList<Feed> feeds) =>
        new()
        {
            Title = "Pointed",
            Rig = new Rig
            {
                Networks =
                [
                    new()
                    {
                        Id = new("net"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                    },
                ],
                Profiles = profiles,
                Devices = profiles.Select(profile => new Device { Id = new(profile.Id.Value["small/".Length..]), Profile = profile.Id }).ToValueList(),
            },
            Feeds = feeds,
        };
}
