using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Rules.Points;

public sealed class FactoryRouteDisplacedTests
{
    private static readonly FactoryRouteDisplaced Rule = new();

    private static Show Base =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

    [Fact]
    public void A_route_over_the_factory_route_of_a_feed_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/1", "desk/out/1")) with
            {
                Feeds = [Feed("main-l", FeedRole.Main, "desk/main/1", "desk/out/1")],
            },
            Severity.Warning,
            "/patch/routes/0",
            "desk/main/1 no longer comes out through desk/out/1, where it went by itself: the route from desk/aux/1 took its place, although feed 'main-l' needs it.",
            "source=desk/main/1",
            "sink=desk/out/1"
        );

    [Fact]
    public void A_slot_on_the_way_to_a_box_counts_too() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/main/1", "desk/transmit/2")) with
            {
                Feeds = [FeedTo("mix", FeedRole.Monitor, "desk/aux/2", "box")],
            },
            Severity.Warning,
            "/patch/routes/0",
            "desk/aux/2 no longer comes out through desk/transmit/2, where it went by itself: the route from desk/main/1 took its place, although feed 'mix' needs it.",
            "source=desk/aux/2",
            "sink=desk/transmit/2"
        );

    [Fact]
    public void A_pair_pushed_off_is_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/2", "desk/out/2"), Route("desk/aux/1", "desk/out/1")) with
            {
                Feeds = [Feed("main", FeedRole.Main, "desk/main/1-2", "desk/out/1-2")],
            },
            Severity.Warning,
            "/patch/routes/0",
            "desk/main/1-2 no longer comes out through desk/out/1-2, where it went by itself: the route from desk/aux/2 took its place, although feed 'main' needs it.",
            "source=desk/main/1-2",
            "sink=desk/out/1-2"
        );

    [Fact]
    public void A_cabled_output_gives_one_finding_without_any_feed() =>
        Expect.One(
            Rule,
            Base.With(Route(null, "desk/out/1")) with
            {
                Rig = Base.Rig with { Cables = [Cable("desk/out/1", "amp/in/1")] },
            },
            Severity.Warning,
            "/patch/routes/0",
            "desk/main/1 no longer comes out through desk/out/1, where it went by itself: a route clears it, although the output is cabled.",
            "source=desk/main/1",
            "sink=desk/out/1"
        );

    [Theory]
    [InlineData("desk/out/1")]
    [InlineData("desk/main/1")]
    public void A_labelled_output_or_bus_gives_one_finding(string at) =>
        Expect.One(
            Rule,
            Base with
            {
                Patch = Base.Patch with { Routes = [Route("desk/aux/1", "desk/out/1")], Labels = [new() { At = At(at), Text = "PA" }] },
            },
            Severity.Warning,
            "/patch/routes/0",
            "desk/main/1 no longer comes out through desk/out/1, where it went by itself: the route from desk/aux/1 took its place, although it is labelled.",
            "source=desk/main/1",
            "sink=desk/out/1"
        );

    [Fact]
    public void A_bus_nobody_speaks_of_gives_none() =>
        Expect.None(Rule, Base.With(Route("desk/aux/1", "desk/out/1"), Route("desk/main/1-2", "desk/transmit/1-2")));

    [Fact]
    public void A_feed_served_elsewhere_gives_none() =>
        Expect.None(
            Rule,
            Base.With(Route("desk/aux/1", "desk/out/1"), Route("desk/main/1", "desk/out/2")) with
            {
                Feeds = [FeedTo("main-l", FeedRole.Main, "desk/main/1", "desk")],
            }
        );

    [Fact]
    public void A_feed_that_the_place_would_not_serve_gives_none() =>
        Expect.None(Rule, Base.With(Route("desk/aux/1", "desk/out/1")) with { Feeds = [FeedTo("main-l", FeedRole.Main, "desk/main/1", "box")] });

    [Fact]
    public void A_cabled_output_that_another_feed_took_gives_none()
    {
        var show = Base.With(Route("desk/aux/1", "desk/out/1")) with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "desk/out/1")] };

        Expect.None(Rule, show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "amp/in/1")] } });
    }

    [Fact]
    public void A_bus_that_moved_to_another_cabled_output_gives_none() =>
        Expect.None(
            Rule,
            Base.With(Route("desk/main/2", "desk/out/1"), Route("desk/main/1", "desk/out/2")) with
            {
                Rig = Base.Rig with { Cables = [Cable("desk/out/1-2", "amp/in/1-2")] },
            }
        );

    [Fact]
    public void A_route_that_says_what_the_factory_says_gives_none() =>
        Expect.None(Rule, Base.With(Route("desk/main/1", "desk/out/1")) with { Feeds = [Feed("main-l", FeedRole.Main, "desk/main/1", "desk/out/1")] });

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    [Property]
    public void Names_and_the_order_of_routes_keep_the_identity(string name)
    {
        var show = Base.With(Route("desk/aux/2", "desk/out/2"), Route("desk/aux/1", "desk/out/1"));
        var feed = Feed("main", FeedRole.Main, "desk/main/1-2", "desk/out/1-2");

        Assert.Equal(
            Expect.Fingerprints(Rule, show with { Feeds = [feed] }),
            Expect.Fingerprints(Rule, show.With([.. show.Patch.Routes.Reverse()]) with { Title = name ?? "", Feeds = [feed with { Name = name }] })
        );
    }
}
