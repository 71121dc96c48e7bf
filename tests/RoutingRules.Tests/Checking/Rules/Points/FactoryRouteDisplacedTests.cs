using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class FactoryRouteDisplacedTests
{
    private static readonly FactoryRouteDisplaced Rule = new();

    private static Show Base =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

    private static Show Labelled(Show show, params string[] at) =>
        show with
        {
            Patch = show.Patch with { Labels = at.Select(point => new PointLabel { At = At(point), Text = "REC" }).ToValueList() },
        };

    [Fact]
    public void A_labelled_bus_without_a_feed_that_a_route_pushed_off_is_told() =>
        Expect.One(
            Rule,
            Labelled(Base.With(Route("desk/aux/1", "desk/out/1")), "desk/main/1"),
            Severity.Warning,
            "/patch/routes/0",
            "desk/main/1, labelled 'REC', no longer comes out through desk/out/1, where it went by itself, nor anywhere else: the route "
                + "from desk/aux/1 took its place.",
            "source=desk/main/1",
            "sink=desk/out/1"
        );

    [Fact]
    public void A_slot_on_the_way_to_a_box_counts_too() =>
        Expect.One(
            Rule,
            Labelled(Base.With(Route(null, "desk/transmit/2")), "desk/aux/2"),
            Severity.Warning,
            "/patch/routes/0",
            "desk/aux/2, labelled 'REC', no longer comes out through desk/transmit/2, where it went by itself, nor anywhere else: a route clears it.",
            "source=desk/aux/2",
            "sink=desk/transmit/2"
        );

    [Fact]
    public void A_pair_pushed_off_is_one_finding() =>
        Assert.Equal(
            ["source=desk/main/1-2", "sink=desk/out/1-2"],
            Assert
                .Single(RuleTester.Findings(Rule, Labelled(Base.With(Route("desk/aux/2", "desk/out/2"), Route("desk/aux/1", "desk/out/1")), "desk/main/1-2")))
                .Entities.Select(entity => $"{entity.Role}={entity.Id}")
        );

    // What a feed misses has a rule of its own; a cable or a label at the far output says nothing about the bus that is gone.
    [Fact]
    public void Feeds_far_cables_and_far_labels_say_nothing_here()
    {
        var show = Base.With(Route("desk/aux/1", "desk/out/1"));
        var fed = show with { Feeds = [Feed("main-l", FeedRole.Main, "desk/main/1", "desk/out/1")] };

        Expect.None(Rule, show);
        Expect.None(Rule, Labelled(fed, "desk/main/1"));
        Assert.Single(RuleTester.Findings(new FeedNotDelivered(), fed));
        Expect.None(Rule, show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "amp/in/1")] } });
        Expect.None(Rule, Labelled(show, "desk/out/1"));
    }

    [Fact]
    public void A_bus_that_still_comes_out_somewhere_gives_none() =>
        Expect.None(Rule, Labelled(Base.With(Route("desk/main/2", "desk/out/1"), Route("desk/main/1", "desk/out/2")), "desk/main/1-2"));

    [Fact]
    public void A_place_that_led_to_no_output_gives_none() =>
        Expect.None(Rule, Labelled(Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Route("desk/aux/1", "desk/transmit/2")), "desk/aux/2"));

    [Fact]
    public void A_route_that_says_what_the_factory_says_gives_none() =>
        Expect.None(Rule, Labelled(Base.With(Route("desk/main/1", "desk/out/1")), "desk/main/1"));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    [Property]
    public void Titles_and_the_order_of_routes_keep_the_identity(string title)
    {
        var show = Labelled(Base.With(Route("desk/aux/2", "desk/out/2"), Route("desk/aux/1", "desk/out/1")), "desk/main/1-2");

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show.With([.. show.Patch.Routes.Reverse()]) with { Title = title ?? "" }));
    }
}
