using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Tests.Assignment.Explaining.WhyShows;

namespace RoutingRules.Tests.Assignment.Explaining;

/// <summary>The causes that keep a feed from other places.</summary>
public sealed class WhyCauseTests
{
    // Output 3 does not work, 4 is reserved, 2 is taken. From 5 on, the first feed of the list would stand above the second: one pair out of order.
    [Fact]
    public void Every_other_place_has_its_cause()
    {
        var show = Rig(Monitor(1, "a"), Monitor(2, "b"));
        show = show with
        {
            Rig = show.Rig with
            {
                Unavailable = [new() { At = SmallShow.At("box/out/3"), Reason = "bent" }],
                Reserved = [new() { At = SmallShow.At("box/out/4"), Reason = "guests" }],
            },
        };

        var decision = Assert.Single(Why(show, "a").Decisions);

        Assert.Equal((DecisionBasis.Chosen, SmallShow.At("box/out/1")), (decision.Basis, decision.At!.Value));
        Assert.Equal(
            [
                new()
                {
                    Cause = RefusalCause.Dead,
                    Points = [SmallShow.At("box/out/3")],
                    Reasons = ["bent"],
                },
                new()
                {
                    Cause = RefusalCause.Reserved,
                    Points = [SmallShow.At("box/out/4")],
                    Reasons = ["guests"],
                },
                new()
                {
                    Cause = RefusalCause.Taken,
                    Points = [SmallShow.At("box/out/2")],
                    By = ["b/1"],
                },
                new()
                {
                    Cause = RefusalCause.Worse,
                    Points = [SmallShow.At("box/out/5-8")],
                    Difference = new() { Number = 6 + (int)ObjectiveLevel.Order, By = 1 },
                },
                new() { Cause = RefusalCause.NotAllowed, Devices = [new("desk")] },
            ],
            decision.Refusals
        );
    }

    // The box takes one stream. The first block carries the first console's monitor, so that 2-4 cannot carry another's, and 5-8 would be a second stream.
    [Fact]
    public void A_full_block_and_a_stream_limit_are_told_apart()
    {
        var single = SmallProfiles.Box with
        {
            Id = new("test/box-single"),
            Limits = new() { StreamsSent = 2, StreamsReceived = 1 },
        };
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("other", SmallProfiles.Console), ("box", single)) with
        {
            Feeds = [SmallShow.FeedTo("a", FeedRole.Monitor, "desk/aux/1", "box"), SmallShow.FeedTo("b", FeedRole.Monitor, "other/aux/1", "box")],
        };

        var decision = Assert.Single(Why(show, "b").Decisions);

        Assert.Equal(DecisionBasis.Unplaced, decision.Basis);
        Assert.Equal([SmallShow.At("box/out/2-4")], decision.Refusals.Single(refusal => refusal.Cause == RefusalCause.BlockClash).Points);
        Assert.Equal([SmallShow.At("box/out/5-8")], decision.Refusals.Single(refusal => refusal.Cause == RefusalCause.StreamLimit).Points);
        Assert.Equal(["a/1"], Assert.Single(decision.Unplaced).Conflict);
    }

    // Four channels of 24 bit at 48 kHz and 1 ms take 5.232 Mbit/s (see StreamComplaintTests); three quarters of 7 Mbit/s are 5.25. Both boxes are fixed and
    // want different signals, so the far one needs a second stream over the first link.
    [Fact]
    public void A_link_without_room_is_named_with_its_direction_and_share()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("near", SmallProfiles.Box), ("far", SmallProfiles.Box)) with
        {
            Feeds = [Monitor(1, "a") with { To = [new() { Devices = [new("near")] }] }, Monitor(2, "b") with { To = [new() { Devices = [new("far")] }] }],
        };
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("l1"),
                        Network = new("net"),
                        From = SmallShow.At("near/net/1"),
                        To = SmallShow.At("desk/net/1"),
                        SpeedMbps = 7,
                    },
                    new()
                    {
                        Id = new("l2"),
                        Network = new("net"),
                        From = SmallShow.At("near/net/2"),
                        To = SmallShow.At("far/net/1"),
                        SpeedMbps = 100,
                    },
                ],
            },
        };

        var answer = Why(show, "b");
        var decision = Assert.Single(answer.Decisions);

        LinkUse full = new()
        {
            Link = new("l1"),
            From = new("desk"),
            To = new("near"),
            Streams = 1,
            BitsPerSecond = 5_232_000,
            MostBitsPerSecond = 5_250_000,
        };
        Assert.Equal(
            [
                new()
                {
                    Cause = RefusalCause.LinkFull,
                    Points = [SmallShow.At("far/out/1-8")],
                    Links = [full],
                },
                new() { Cause = RefusalCause.NotAllowed, Devices = [new("desk"), new("near")] },
            ],
            decision.Refusals
        );
        Assert.Equal(["a/1"], Assert.Single(decision.Unplaced).Conflict);
        Assert.Equal(
            "It may take 8 points, but link 'l1' from desk to near is full: 5.23 of the 5.25 Mbit/s that streams may take; use a faster link, let "
                + "fewer streams pass it, or allow other devices or zones.",
            Assert.Single(decision.Unplaced).Reason
        );
        Assert.Contains(
            "far/out/1-8  free, but link 'l1' from desk to near is full: 5.23 of the 5.25 Mbit/s that streams may take\n",
            Text(answer, show),
            StringComparison.Ordinal
        );
        Assert.Equal([full], answer.Links);
    }

    [Fact]
    public void Spares_and_separations_are_told_apart()
    {
        var spare = Why(Rig(Monitor(1, "a"), Monitor(2, "b")), "b", new() { Spares = 7 });
        var apart = Why(Rig(Monitor(1, "a"), Monitor(2, "b") with { SeparateFrom = [new() { Feed = new("a"), By = SeparationBy.Device }] }), "b");

        Assert.Equal([SmallShow.At("box/out/2-8")], spare.Decisions[0].Refusals.Single(refusal => refusal.Cause == RefusalCause.Spare).Points);
        Assert.Equal([SmallShow.At("box/out/2-8")], apart.Decisions[0].Refusals.Single(refusal => refusal.Cause == RefusalCause.Separation).Points);
    }
}
