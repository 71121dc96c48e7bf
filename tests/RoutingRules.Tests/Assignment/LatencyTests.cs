using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>The option that signals must not arrive late; the limits are common practice, no source.</summary>
[Trait("Speed", "slow")]
public class LatencyTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    // Packets of 1 ms; the near box states 4 ms at its outputs, the far one 1 ms: 5 ms and 2 ms after the bus.
    private static Show Rig(params Feed[] feeds)
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("near", Slow("test/slow", 4)), ("far", Slow("test/quick", 1)));
        return show with { Feeds = feeds.ToValueList() };
    }

    private static DeviceProfile Slow(string id, double milliseconds) =>
        SmallProfiles.Box with
        {
            Id = new(id),
            LatencyMilliseconds = [new() { Group = new("out"), Value = milliseconds }, new() { Group = new("in"), Value = 0.5 }],
        };

    private static Feed Either(string id, FeedRole role, int aux) =>
        SmallShow.FeedTo(id, role, $"desk/aux/{aux}", "near") with
        {
            To = [new() { Devices = [new("near"), new("far")] }],
        };

    private static string? Place(Show show, AssignmentOptions options, string demand)
    {
        var result = Engine.Assign(show, options);
        Assert.Equal([], AssignmentVerifier.Verify(show, result, options, _ => null).Problems);
        return result.Placements.FirstOrDefault(placement => placement.Demand == demand)?.At.ToString();
    }

    [Theory]
    [InlineData(null, "near/out/1")]
    [InlineData(5.0, "near/out/1")]
    [InlineData(4.9, "far/out/1")]
    [InlineData(2.0, "far/out/1")]
    [InlineData(1.9, null)]
    public void A_feed_goes_where_it_arrives_in_time(double? most, string? at) =>
        Assert.Equal(at, Place(Rig(Either("a", FeedRole.Monitor, 1)), new AssignmentOptions { LatencyMilliseconds = most }, "a/1"));

    [Theory]
    [InlineData("in-ear", "far/out/1")]
    [InlineData("monitor", "near/out/1")]
    public void In_ear_feeds_may_have_a_limit_of_their_own(string role, string at) =>
        Assert.Equal(at, Place(Rig(Either("a", new(role), 1)), new AssignmentOptions { InEarLatencyMilliseconds = 3 }, "a/1"));

    // The outputs of the near box are packs: 5 ms there, 2 ms at the far one, which nobody wears.
    [Theory]
    [InlineData("monitor")]
    [InlineData("inear")]
    [InlineData("record")]
    public void What_ends_in_ears_has_the_limit_of_in_ear_feeds_whatever_its_role(string role)
    {
        var show = Rig(Either("a", new(role), 1));
        show = show with
        {
            Rig = show.Rig with { Profiles = show.Rig.Profiles.Select(profile => profile.Id.Value == "test/slow" ? Worn(profile) : profile).ToValueList() },
        };

        Assert.Equal("far/out/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 8, InEarLatencyMilliseconds = 3 }, "a/1"));
        Assert.Equal("near/out/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 8, InEarLatencyMilliseconds = 5 }, "a/1"));
        Assert.Equal("far/out/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 4 }, "a/1"));
    }

    private static DeviceProfile Worn(DeviceProfile profile) =>
        profile with
        {
            PortGroups = profile.PortGroups.Select(group => group.Kind == PortKind.Output ? group with { InEar = true } : group).ToValueList(),
        };

    [Fact]
    public void A_pin_at_a_rack_that_is_late_is_told_the_limit_for_ears()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("near", Slow("test/slow", 4)), ("rack", EarRig.Rack)) with
        {
            Feeds = [SmallShow.Feed("a", FeedRole.Monitor, "desk/aux/1", "rack/in/1")],
        };
        show = show with { Rig = show.Rig with { Cables = [SmallShow.Cable("near/out/1", "rack/in/1")] } };

        var late = Engine.Assign(show, new AssignmentOptions { LatencyMilliseconds = 8, InEarLatencyMilliseconds = 3 });

        Assert.Equal(
            "It would arrive where it is pinned later than 3 ms; pin it elsewhere, take a slow device out of the path, or allow more.",
            Assert.Single(late.Unplaced).Reason
        );
        Assert.Equal("near/out/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 8, InEarLatencyMilliseconds = 5 }, "a/1"));
    }

    // The account of a patch made without the limit, checked with it.
    [Fact]
    public void The_verifier_knows_the_ears_at_the_end_of_a_cable()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("near", Slow("test/slow", 4)), ("rack", EarRig.Rack)) with
        {
            Feeds = [SmallShow.Feed("a", FeedRole.Monitor, "desk/aux/1", "rack/in/1")],
        };
        show = show with { Rig = show.Rig with { Cables = [SmallShow.Cable("near/out/1", "rack/in/1")] } };
        var placed = Engine.Assign(show, new AssignmentOptions());

        Assert.Contains(
            "later than 3 ms",
            string.Join("; ", AssignmentVerifier.Verify(show, placed, new AssignmentOptions { InEarLatencyMilliseconds = 3 }, _ => null).Problems),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("record")]
    [InlineData("broadcast")]
    public void Recordings_and_broadcasts_may_be_late(string role) =>
        Assert.Equal("near/out/1", Place(Rig(Either("a", new(role), 1)), new AssignmentOptions { LatencyMilliseconds = 1 }, "a/1"));

    // An amplifier of 3 ms behind the first output of the far box: 1 + 1 + 3 = 5 ms there, 2 ms at the second.
    [Fact]
    public void What_plays_the_feed_behind_an_output_counts()
    {
        var amplifier = SmallProfiles.Amplifier with { Through = [SmallProfiles.Amplifier.Through[0] with { LatencyMilliseconds = 3 }] };
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("far", Slow("test/quick", 1)), ("amp", amplifier)) with
        {
            Feeds = [SmallShow.FeedTo("a", FeedRole.Monitor, "desk/aux/1", "far")],
        };
        show = show with { Rig = show.Rig with { Cables = [SmallShow.Cable("far/out/1", "amp/in/1")] } };

        Assert.Equal("far/out/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 5 }, "a/1"));
        Assert.Equal("far/out/2", Place(show, new AssignmentOptions { LatencyMilliseconds = 4.9 }, "a/1"));
    }

    // 0.5 ms at the input and 1 ms of packets; within the desk only the desk counts, which states nothing.
    [Fact]
    public void Lines_are_late_sink_by_sink()
    {
        var show = Rig() with { Lines = [SmallShow.Line("vox", "near/in/1", "desk/channel/1")] };

        var late = Engine.Assign(show, new AssignmentOptions { LatencyMilliseconds = 1.4 });

        Assert.Equal("near/in/1", Place(show, new AssignmentOptions { LatencyMilliseconds = 1.5 }, "vox"));
        Assert.Equal(
            "It would arrive later than 1.4 ms wherever it may go; allow other devices or zones, take a slow device out of the path, or allow more.",
            Assert.Single(late.Unplaced).Reason
        );
    }

    [Fact]
    public void A_late_pin_breaks_a_rule_and_a_late_hold_yields()
    {
        var pinned = Rig(SmallShow.Feed("a", FeedRole.Monitor, "desk/aux/1", "near/out/1"));
        var held = Engine.Assign(Rig(Either("m", FeedRole.Main, 1)), new AssignmentOptions()).Show;

        var result = Engine.Assign(pinned, new AssignmentOptions { LatencyMilliseconds = 3 });

        Assert.Equal((AssignmentStatus.PinsContradict, 1), (result.Status, result.Contradictions.Count));
        Assert.Equal(
            "It would arrive where it is pinned later than 3 ms; pin it elsewhere, take a slow device out of the path, or allow more.",
            Assert.Single(result.Unplaced).Reason
        );
        Assert.Equal("near/out/1", Place(held, new AssignmentOptions(), "m/1"));
        Assert.Equal("far/out/1", Place(held, new AssignmentOptions { LatencyMilliseconds = 3 }, "m/1"));
    }

    [Fact]
    public void Why_says_that_a_place_is_reached_too_late()
    {
        var show = Rig(Either("a", FeedRole.Monitor, 1));
        var answer = Engine.Why(show, new WhyQuestion { Subject = "a" }, new AssignmentOptions { LatencyMilliseconds = 3 });

        Assert.Equal([SmallShow.At("near/out/1-8")], answer.Decisions[0].Refusals.Single(refusal => refusal.Cause == RefusalCause.Late).Points);
    }

    [Fact]
    public void The_verifier_finds_what_arrives_late()
    {
        var show = Rig(Either("a", FeedRole.Monitor, 1));
        var result = Engine.Assign(show, new AssignmentOptions());

        var problems = AssignmentVerifier.Verify(show, result, new AssignmentOptions { LatencyMilliseconds = 4.9 }, _ => null).Problems;

        Assert.Contains(problems, problem => problem == "a/1 is said to be at near/out/1, but it arrives there after 5 ms, later than 4.9 ms.");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_limit_of_nothing_is_refused(double most)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Engine.Assign(Rig(), new AssignmentOptions { LatencyMilliseconds = most }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Engine.Assign(Rig(), new AssignmentOptions { InEarLatencyMilliseconds = most }));
    }

    [Fact]
    public void Tiny_shows_with_slow_devices_come_out_as_well_as_anything_can()
    {
        var wrong = Enumerable.Range(5_000, 120).Select(Late).SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny)).ToList();

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    [Fact]
    public void The_limits_make_a_difference_often_enough()
    {
        var differing = Enumerable
            .Range(5_000, 120)
            .Select(Late)
            .Count(tiny =>
                Engine.Assign(tiny.Show, tiny.Options).Objective
                != Engine.Assign(tiny.Show, tiny.Options with { LatencyMilliseconds = null, InEarLatencyMilliseconds = null }).Objective
            );

        Assert.InRange(differing, 20, 120);
    }

    /// <summary>A tiny show whose groups state 0 to 3 ms, and limits within which some ways stay.</summary>
    private static TinyInstance Late(int seed)
    {
        var tiny = TinyInstances.Make(seed);
        var dice = new TinyDice(seed + 2_000_000);
        var profiles = tiny.Show.Rig.Profiles.Select(profile =>
            profile with
            {
                LatencyMilliseconds = profile
                    .PortGroups.Where(group => group.Kind != PortKind.Network && dice.In(60))
                    .Select(group => new GroupLatency { Group = group.Id, Value = dice.From(0, 6) / 2.0 })
                    .ToValueList(),
            }
        );
        return tiny with
        {
            Show = tiny.Show with { Rig = tiny.Show.Rig with { Profiles = profiles.ToValueList() } },
            Options = tiny.Options with { LatencyMilliseconds = dice.From(4, 14) / 2.0, InEarLatencyMilliseconds = dice.In(50) ? dice.From(3, 8) / 2.0 : null },
        };
    }
}
