using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class PairSplitTests
{
    private static readonly PairSplit Rule = new();

    private static Show Patched(params Route[] routes)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box)).With(routes);
        return show.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "b/receive/1-4"));
    }

    [Fact]
    public void Halves_on_two_numbers_apart_give_one_finding()
    {
        var show = Patched(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/6", "desk/transmit/4")) with
        {
            Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a") with { Name = "Ears" }],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "The halves of the pair 'Ears' are not neighbours: left comes from a/out/1, right from a/out/4.",
            "feed=ears",
            "left=a/out/1",
            "right=a/out/4"
        );
    }

    [Fact]
    public void Halves_on_two_devices_give_one_finding()
    {
        var show = Patched(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/6", "desk/transmit/6")) with
        {
            Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a") with { To = [new() { Devices = [new("a"), new("b")] }] }],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "The halves of the pair 'ears' are not neighbours: left comes from a/out/1, right from b/out/2.",
            "feed=ears",
            "left=a/out/1",
            "right=b/out/2"
        );
    }

    [Fact]
    public void Neighbours_give_none_even_from_an_even_number()
    {
        Expect.None(Rule, Patched() with { Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/1-2", "a")] });
        Expect.None(Rule, Patched() with { Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/2-3", "a")] });
        Expect.None(Rule, Patched() with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/2-3", "a/out/2-3")] });
    }

    [Fact]
    public void A_missing_right_half_is_named_with_its_cause() =>
        Expect.One(
            Rule,
            Patched(Route(null, "desk/transmit/4")) with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "a/out/3-4")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "Only left of the pair 'ears' arrives, at a/out/3; right (desk/aux/4) is missing: desk/transmit/4 is set to nothing.",
            "feed=ears",
            "at=a/out/3-4",
            "left=a/out/3"
        );

    [Fact]
    public void A_missing_left_half_of_a_pair_left_to_a_device_is_named_with_its_cause() =>
        Expect.One(
            Rule,
            Patched(Route("desk/aux/6", "desk/transmit/2")) with
            {
                Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "Only right of the pair 'ears' arrives, at a/out/2; left (desk/aux/5) is missing: desk/aux/5 is routed nowhere.",
            "feed=ears",
            "right=a/out/2"
        );

    [Fact]
    public void Left_at_both_points_means_that_right_is_missing() =>
        Expect.One(
            Rule,
            Patched(Route("desk/aux/3", "desk/transmit/4")) with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "a/out/3-4")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "Only left of the pair 'ears' arrives, at a/out/3; right (desk/aux/4) is missing: a/out/4 carries desk/aux/3 instead.",
            "feed=ears",
            "at=a/out/3-4",
            "left=a/out/3"
        );

    [Fact]
    public void Cables_from_outputs_apart_split_a_pair_pinned_behind_them()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        show = show.With(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/6", "desk/transmit/4"))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")) with
        {
            Rig = show.Rig with { Cables = [Cable("box/out/1", "amp/in/1"), Cable("box/out/4", "amp/in/2")] },
            Feeds = [Feed("side", FeedRole.Monitor, "desk/aux/5-6", "amp/in/1-2")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "The halves of the pair 'side' are not neighbours: left comes from box/out/1, right from box/out/4.",
            "feed=side",
            "at=amp/in/1-2",
            "left=box/out/1",
            "right=box/out/4"
        );
    }

    [Fact]
    public void Two_broken_destinations_of_one_pair_are_two_findings_with_different_identity()
    {
        var show = Patched(
            Route("desk/aux/5", "desk/transmit/1"),
            Route("desk/aux/6", "desk/transmit/4"),
            Route("desk/aux/5", "desk/transmit/5"),
            Route("desk/aux/6", "desk/transmit/7")
        ) with
        {
            Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a", "b")],
        };

        Assert.Equal(2, Expect.Fingerprints(Rule, show).Distinct().Count());
    }

    [Fact]
    public void Half_a_pair_at_a_pin_is_not_taken_for_a_destination_left_open()
    {
        var show = Patched(Route("desk/aux/5", "desk/transmit/1")) with
        {
            Feeds =
            [
                FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a") with
                {
                    To = [new() { Devices = [new("a")] }, new() { At = At("a/out/1-2") }, new() { At = At("a/out/1-2") }],
                },
            ],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/1",
            "Only left of the pair 'ears' arrives, at a/out/1; right (desk/aux/6) is missing: a/out/2 carries desk/aux/2 instead.",
            "feed=ears",
            "at=a/out/1-2",
            "left=a/out/1"
        );
    }

    [Fact]
    public void Outputs_that_serve_other_feeds_are_not_taken_for_a_half()
    {
        var show = Patched(Route("desk/aux/5", "desk/transmit/1")) with
        {
            Feeds = [FeedTo("mono", FeedRole.Monitor, "desk/aux/5", "a"), FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a")],
        };

        Expect.None(Rule, show);
        Assert.Equal([Entity.Of("feed", "ears")], Assert.Single(RuleTester.Findings(new FeedNotDelivered(), show)).Entities);
    }

    [Fact]
    public void A_pair_of_which_nothing_arrives_is_left_to_its_own_rule() =>
        Expect.None(Rule, Patched() with { Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/7-8", "a")] });

    [Fact]
    public void A_split_pair_is_not_told_as_missing()
    {
        var show = Patched(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/6", "desk/transmit/4")) with
        {
            Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/5-6", "a")],
        };

        Expect.None(new FeedNotDelivered(), show);
        Expect.None(new FeedDeliveredElsewhere(), show);
        Expect.None(new PairSwapped(), show);
    }

    [Fact]
    public void A_half_lost_by_a_reference_that_does_not_resolve_is_left_to_its_own_rule() =>
        Expect.None(
            Rule,
            Patched(Route("desk/aux/44", "desk/transmit/4"), Route(null, "desk/transmit/4")) with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "a/out/3-4")],
            }
        );
}
