using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Hearing.EarRig;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class EarsHearOthersTests
{
    private static readonly EarsHearOthers Rule = new();

    private static Feed Lead => Ears("lead", "desk/aux/1-2", "rack/in/1-2") with { Name = "Ears lead", Person = "Lead", Pack = "1" };

    private static Feed Drums => Ears("drums", "desk/aux/3-4", "rack/in/3-4") with { Name = "Ears drums", Person = "the drummer", Pack = "2" };

    [Fact]
    public void Crossed_cables_of_two_people_are_one_error_that_says_who_hears_whom()
    {
        var show = Cabled(EarRig.Show(Lead, Drums), Cable("box/out/1-2", "rack/in/3-4"), Cable("box/out/3-4", "rack/in/1-2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0",
            "In-ear mixes are mixed up: Lead hears 'Ears drums' at rack/in/1-2 and the drummer hears 'Ears lead' at rack/in/3-4.",
            "input=rack/in/1-2",
            "input=rack/in/3-4",
            "feed=drums",
            "feed=lead"
        );
        Expect.None(new FeedNotDelivered(), show);
        Expect.None(new FeedDeliveredElsewhere(), show);
        Expect.None(new InEarCarriesOther(), show);
        Expect.None(new OutputStray(), show.With([.. show.Patch.Routes, Route(null, "desk/out/1-2")]));
    }

    [Fact]
    public void A_route_that_brings_one_mix_to_the_other_pack_says_who_hears_it() =>
        Expect.One(
            Rule,
            EarRig.Show(Lead, Drums).With(Route("desk/aux/3-4", "desk/transmit/1-2")),
            Severity.Error,
            "/feeds/0",
            "In-ear mixes are mixed up: Lead hears 'Ears drums' at rack/in/1-2.",
            "input=rack/in/1-2",
            "feed=drums",
            "feed=lead"
        );

    [Fact]
    public void Packs_that_the_panel_names_tell_crossed_cables_where_nothing_is_pinned()
    {
        var feeds = new[] { Lead, Drums }.Select(feed => feed with { To = [new() { Devices = [new("rack")] }] }).ToArray();
        var rig = EarRig.Show(feeds).WithRack(StereoRack);
        var crossed = Cabled(rig, Cable("box/out/1-2", "rack/in/3-4"), Cable("box/out/3-4", "rack/in/1-2"));

        Expect.None(Rule, rig);
        Expect.One(
            Rule,
            crossed,
            Severity.Warning,
            "/feeds/0",
            "In-ear mixes are mixed up: Lead hears 'Ears drums' at rack/in/1-2 (1L, 1R) and the drummer hears 'Ears lead' at rack/in/3-4 (2L, 2R).",
            "input=rack/in/1-2",
            "input=rack/in/3-4",
            "feed=drums",
            "feed=lead"
        );
        Expect.None(Rule, crossed with { Feeds = [feeds[0] with { Pack = "A" }, feeds[1] with { Pack = "B" }] });
        Expect.None(Rule, crossed with { Feeds = [feeds[0], feeds[1] with { Pack = "3" }] });
    }

    [Fact]
    public void Feeds_at_their_places_a_missing_one_and_places_out_of_sight_of_a_rack_are_none()
    {
        Expect.None(Rule, EarRig.Show(Lead, Drums));
        Expect.None(Rule, EarRig.Show(Lead, Drums).With(Route(null, "desk/transmit/1-2")));
        Expect.None(
            Rule,
            EarRig
                .Show(Ears("a", "desk/aux/1", "box/out/7"), Ears("b", "desk/aux/2", "box/out/8"))
                .With(Route("desk/aux/2", "desk/transmit/7"), Route("desk/aux/1", "desk/transmit/8"))
        );
    }

    [Fact]
    public void The_order_of_feeds_does_not_change_what_it_is_about()
    {
        Cable[] crossed = [Cable("box/out/1-2", "rack/in/3-4"), Cable("box/out/3-4", "rack/in/1-2")];
        Assert.Equal(
            Expect.Fingerprints(Rule, Cabled(EarRig.Show(Lead, Drums), crossed)),
            Expect.Fingerprints(Rule, Cabled(EarRig.Show(Drums, Lead), crossed))
        );
    }
}
