using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Answers;

public class WhyTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static Show Rig(params Feed[] feeds) =>
        SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds = feeds.ToValueList(),
        };

    private static Feed Monitor(int number, string id) => SmallShow.FeedTo(id, FeedRole.Monitor, $"desk/aux/{number}", "box");

    private static WhyAnswer Why(Show show, string subject, AssignmentOptions? options = null, string? not = null, string? at = null) =>
        Engine.Why(
            show,
            new WhyQuestion
            {
                Subject = subject,
                Not = not is null ? null : SmallShow.At(not),
                At = at is null ? null : SmallShow.At(at),
            },
            options
        );

    private static string Text(WhyAnswer answer, Show show)
    {
        using var output = new StringWriter { NewLine = "\n" };
        WhyReport.Write(answer, show, output);
        return output.ToString();
    }

    // The only feed stands at 1; every other output is free and only higher. The next is 2, one more.
    [Fact]
    public void A_single_feed_has_the_lowest_number_and_the_next_one_as_runner_up()
    {
        var show = Rig(Monitor(1, "mon") with { Name = "Wedge" });

        Assert.Equal(
            """
            Wedge [mon/1] is at box/out/1: the best place found for the show as a whole.
              Without this place it would be at box/out/2. That uses higher numbers, 1 more in sum.
              Why not elsewhere
                box/out/2-8  free, but uses higher numbers, 1 more in sum
                desk         not among the devices and zones it may use

            How full the devices are: used of what can be used
                   outputs  inputs  blocks sent  blocks received  streams received
              box  1 of 8   0 of 8  0 of 2       1 of 2           1 of 2

            """.ReplaceLineEndings("\n"),
            Text(Why(show, "mon"), show)
        );
    }

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

    [Fact]
    public void Of_equally_good_places_the_earlier_device_wins()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("far", SmallProfiles.Box)) with
        {
            Feeds = [Monitor(1, "a") with { To = [new() { Devices = [new("box"), new("far")] }] }],
        };

        var decision = Assert.Single(Why(show, "a").Decisions);

        Assert.Equal(SmallShow.At("box/out/1"), decision.At);
        Assert.Equal([SmallShow.At("far/out/1")], decision.Refusals.Single(refusal => refusal.Cause == RefusalCause.EquallyGood).Points);
        Assert.Equal((SmallShow.At("far/out/1"), (ObjectiveDifference?)null), (decision.RunnerUp!.At!.Value, decision.RunnerUp.Difference));
        Assert.Contains("just as good; the earlier device and the lower number win", Text(Why(show, "a"), show), StringComparison.Ordinal);
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

    [Fact]
    public void Pinned_held_and_kept_places_are_called_so()
    {
        var patched = Engine
            .Assign(
                Rig(
                    SmallShow.FeedTo("m", FeedRole.Main, "desk/main/1", "box"),
                    Monitor(1, "a"),
                    SmallShow.Feed("p", FeedRole.Monitor, "desk/aux/2", "box/out/4")
                )
            )
            .Show;

        Assert.Equal(DecisionBasis.Held, Why(patched, "m").Decisions[0].Basis);
        Assert.Equal(DecisionBasis.Kept, Why(patched, "a").Decisions[0].Basis);
        Assert.Equal((DecisionBasis.Pinned, 0), (Why(patched, "p").Decisions[0].Basis, Why(patched, "p").Decisions[0].Refusals.Count));
    }

    [Fact]
    public void Without_its_place_a_feed_goes_to_the_next_and_nothing_else_moves()
    {
        var show = Rig(Monitor(1, "a"), Monitor(2, "b"));

        var what = Why(show, "a", not: "box/out/1").WhatIf!;

        Assert.Equal(SmallShow.At("box/out/3"), what.At);
        Assert.Empty(what.Moves);
        Assert.True(what.IsProven);
    }

    // Output 1 would be lower, but then the second of the list would stand before the first.
    [Fact]
    public void A_place_that_is_taken_is_made_free_by_moving_the_one_that_has_it()
    {
        var show = Rig(Monitor(1, "a"), Monitor(2, "b"));
        var answer = Why(show, "a", at: "box/out/2");

        Assert.Equal(
            [
                new()
                {
                    Demand = "b/1",
                    From = SmallShow.At("box/out/2"),
                    To = SmallShow.At("box/out/3"),
                },
            ],
            answer.WhatIf!.Moves
        );
        Assert.StartsWith(
            "a [a/1] can be at box/out/2.\nb [b/1] must leave box/out/2 and would go to box/out/3.\n",
            Text(answer, show),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_place_that_another_pin_has_is_a_contradiction()
    {
        var show = Rig(Monitor(1, "a"), SmallShow.Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2"));
        var answer = Why(show, "a", at: "box/out/2");

        Assert.Equal(["a/1", "b/1"], answer.WhatIf!.Contradiction);
        Assert.StartsWith(
            "a [a/1] cannot be at box/out/2: that cannot hold together with the fixed places of b; free one of them.\n",
            Text(answer, show),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_is_so_already_changes_nothing()
    {
        var show = Rig(Monitor(1, "a"));

        Assert.StartsWith("a [a/1] is at box/out/1 already.\n", Text(Why(show, "a", at: "box/out/1"), show), StringComparison.Ordinal);
        Assert.StartsWith(
            "a [a/1] is not at box/out/5 anyway but at box/out/1; nothing would change.\n",
            Text(Why(show, "a", not: "box/out/5"), show),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("mom", null, null, "The show has no feed or line 'mom'; the nearest ids are mon, pair.")]
    [InlineData("mon/2", null, null, "'mon/2' is no entry of the feed 'mon': its `to` has 1, counted from 1.")]
    [InlineData("mon", "box/out/1-2", null, "'mon' is one signal and takes one point; box/out/1-2 names 2.")]
    [InlineData("pair", "box/out/3", null, "'pair' is a pair and takes two points that follow one another, such as box/out/1-2; name both.")]
    [InlineData("mon", "box/out/9", null, "'box/out/9' is beyond the end: box/out has the numbers 1 to 8.")]
    [InlineData("mon", "bax/out/1", null, "The rig has no device 'bax'; it has box, desk.")]
    [InlineData("mon", "box/oat/1", null, "Device 'box' has no port group 'oat'; it has in, out, transmit, receive, net.")]
    [InlineData(
        "mon",
        "box/in/1",
        null,
        "box/in/1 can never be the place of mon/1: a feed takes an output, an input that an output is cabled to, or a slot or channel that signals "
            + "can be routed to; name another point."
    )]
    [InlineData("mon", "box/out/1", "box/out/2", "A place that is wanted and one that is not cannot be asked about together; ask twice.")]
    public void A_question_that_cannot_be_answered_says_what_to_ask_instead(string subject, string? at, string? not, string expected)
    {
        var show = Rig(Monitor(1, "mon"), SmallShow.FeedTo("pair", FeedRole.Monitor, "desk/aux/3-4", "box"));

        Assert.Equal(expected, Assert.Throws<ArgumentException>(() => Why(show, subject, null, not, at)).Message);
    }
}
