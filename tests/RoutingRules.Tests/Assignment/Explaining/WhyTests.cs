using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Tests.Assignment.Explaining.WhyShows;

namespace RoutingRules.Tests.Assignment.Explaining;

public sealed class WhyTests
{
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

    [Fact]
    public void Pinned_held_and_kept_places_are_called_so()
    {
        var patched = TestEngine
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
