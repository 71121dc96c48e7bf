using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class PairSwappedTests
{
    private static readonly PairSwapped Rule = new();

    private static Show Patched(params Route[] routes)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(routes);
        return show.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "box/transmit/1-4", "desk/receive/1-4"));
    }

    private static Show Swapped => Patched(Route("desk/aux/4", "desk/transmit/3"), Route("desk/aux/3", "desk/transmit/4"));

    [Fact]
    public void A_pinned_pair_with_right_first_gives_one_finding() =>
        Expect.One(
            Rule,
            Swapped with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4") with { Name = "Ears" }],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "The pair 'Ears' is swapped at box/out/3-4: box/out/3 carries right (desk/aux/4) and box/out/4 carries left (desk/aux/3).",
            "feed=ears",
            "points=box/out/3-4"
        );

    [Fact]
    public void A_pair_left_to_a_device_is_found_where_it_arrives() =>
        Expect.One(
            Rule,
            Swapped with
            {
                Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/3-4", "box")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "The pair 'ears' is swapped at box/out/3-4: box/out/3 carries right (desk/aux/4) and box/out/4 carries left (desk/aux/3).",
            "feed=ears",
            "points=box/out/3-4"
        );

    [Fact]
    public void A_pair_in_order_gives_none()
    {
        Expect.None(Rule, Patched() with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4")] });
        Expect.None(Rule, Patched() with { Feeds = [FeedTo("ears", FeedRole.InEar, "desk/aux/3-4", "box")] });
    }

    [Fact]
    public void Cables_that_cross_swap_a_pair_pinned_behind_them()
    {
        var show = Of(("desk", SmallProfiles.Console), ("amp", SmallProfiles.Amplifier));
        show = show with
        {
            Rig = show.Rig with { Cables = [Cable("desk/out/1", "amp/in/2"), Cable("desk/out/2", "amp/in/1")] },
            Feeds = [Feed("pa", FeedRole.Main, "desk/main/1-2", "amp/in/1-2")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "The pair 'pa' is swapped at amp/in/1-2: amp/in/1 carries right (desk/main/2) and amp/in/2 carries left (desk/main/1).",
            "feed=pa",
            "points=amp/in/1-2"
        );
    }

    [Theory]
    [InlineData("box/in/1-2", true)]
    [InlineData("box/in/3-4", false)]
    public void A_pinned_line_is_found_at_the_sink_it_reaches_the_wrong_way_round(string at, bool isSwapped)
    {
        var show = Patched(Route("desk/receive/2", "desk/channel/5"), Route("desk/receive/1", "desk/channel/6")) with
        {
            Lines = [Line("keys", at, "desk/channel/1-2", "desk/channel/5-6") with { Name = "Keys" }],
        };

        if (isSwapped)
        {
            Expect.One(
                Rule,
                show,
                Severity.Error,
                "/lines/0/to/1",
                "The pair 'Keys' is swapped at desk/channel/5-6: desk/channel/5 carries right (box/in/2) and desk/channel/6 carries left (box/in/1).",
                "line=keys",
                "points=desk/channel/5-6"
            );
        }
        else
        {
            Expect.None(Rule, show);
        }
    }

    [Fact]
    public void A_line_left_to_a_device_is_found_too()
    {
        var show = Patched(Route("desk/receive/4", "desk/channel/5"), Route("desk/receive/3", "desk/channel/6")) with
        {
            Lines =
            [
                new()
                {
                    Id = new("keys"),
                    Kind = LineKind.Line,
                    Width = 2,
                    From = new() { Devices = [new("box")] },
                    To = [At("desk/channel/5-6")],
                },
            ],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/lines/0/to/0",
            "The pair 'keys' is swapped at desk/channel/5-6: desk/channel/5 carries right (box/in/4) and desk/channel/6 carries left (box/in/3).",
            "line=keys",
            "points=desk/channel/5-6"
        );
    }

    [Fact]
    public void A_line_from_a_source_inside_a_device_is_found_too()
    {
        var show = Of(("desk", SmallProfiles.Console)).With(Route("desk/in/1", "desk/channel/2"), Route("desk/in/2", "desk/channel/1")) with
        {
            Lines =
            [
                new()
                {
                    Id = new("player"),
                    Kind = LineKind.Line,
                    Width = 2,
                    From = new() { Source = At("desk/in/1-2") },
                    To = [At("desk/channel/1-2")],
                },
            ],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/lines/0/to/0",
            "The pair 'player' is swapped at desk/channel/1-2: desk/channel/1 carries right (desk/in/2) and desk/channel/2 carries left (desk/in/1).",
            "line=player",
            "points=desk/channel/1-2"
        );
    }

    [Fact]
    public void Both_points_with_the_same_half_and_single_width_feeds_are_not_swapped()
    {
        Expect.None(Rule, Patched(Route("desk/aux/3", "desk/transmit/4")) with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4")] });
        Expect.None(
            Rule,
            Swapped with
            {
                Feeds = [Feed("l", FeedRole.InEar, "desk/aux/3", "box/out/3"), Feed("r", FeedRole.InEar, "desk/aux/4", "box/out/4")],
            }
        );
    }

    [Fact]
    public void A_swapped_pair_is_neither_missing_nor_split()
    {
        var show = Swapped with { Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4")] };

        Expect.None(new FeedNotDelivered(), show);
        Expect.None(new FanOutLost(), show);
        Expect.None(new FeedDeliveredElsewhere(), show);
        Expect.None(new PairSplit(), show);
    }

    [Property]
    public void Renaming_keeps_the_identity(string name)
    {
        var feed = Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4");

        Assert.Equal(
            Expect.Fingerprints(Rule, Swapped with { Feeds = [feed] }),
            Expect.Fingerprints(Rule, Swapped with { Title = name ?? "", Feeds = [feed with { Name = name }] })
        );
    }
}
