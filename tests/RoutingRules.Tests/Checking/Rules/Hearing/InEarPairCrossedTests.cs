using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Hearing.EarRig;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class InEarPairCrossedTests
{
    private static readonly InEarPairCrossed Rule = new();

    private static Show Show(params Cable[] cables) =>
        Cabled(EarRig.Show(Ears("ears", "desk/aux/1-2", "box/out/1-2") with { Name = "Ears singer", Person = "singer" }).WithRack(StereoRack), cables);

    [Fact]
    public void A_loom_one_place_off_puts_a_pair_on_two_packs()
    {
        Expect.One(
            Rule,
            Show(Cable("box/out/1-2", "rack/in/2-3")),
            Severity.Error,
            "/feeds/0/to/0",
            "'Ears singer' lands on rack/in/2-3 (1R, 2L), one place off: left in the right ear of one pack, right in the left ear of the next, and "
                + "singer hears half of it.",
            "input=rack/in/2-3",
            "feed=ears"
        );
        var plain = StereoRack with { PortGroups = [StereoRack.PortGroups[0] with { PanelLabels = [] }] };
        Assert.Single(RuleTester.Findings(Rule, Show(Cable("box/out/1-2", "rack/in/2-3")).WithRack(plain)));
        Expect.None(Rule, Show(Cable("box/out/1-2", "rack/in/2-3")).WithRack(Rack));
    }

    [Fact]
    public void Two_pairs_of_one_loom_are_one_finding()
    {
        var rack = StereoRack with { PortGroups = [StereoRack.PortGroups[0] with { Count = 6, PanelLabels = [] }] };
        var show = Cabled(
            EarRig.Show(Ears("a", "desk/aux/1-2", "box/out/1-2"), Ears("b", "desk/aux/3-4", "box/out/3-4")).WithRack(rack),
            Cable("box/out/1-4", "rack/in/2-5")
        );
        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "'a' and 'b' land on rack/in/2-5, one place off: left in the right ear of one pack, right in the left ear of the next, and the "
                + "listener of 'a' and the listener of 'b' hear half of them.",
            "input=rack/in/2-5",
            "feed=a",
            "feed=b"
        );
    }

    [Fact]
    public void Crossed_plugs_at_the_rack_exchange_the_sides() =>
        Expect.One(
            Rule,
            Show(Cable("box/out/1", "rack/in/2"), Cable("box/out/2", "rack/in/1")),
            Severity.Error,
            "/feeds/0/to/0",
            "Left and right are crossed at rack/in/1-2 (1L, 1R): singer hears 'Ears singer' with the sides exchanged.",
            "input=rack/in/1-2",
            "feed=ears"
        );

    [Fact]
    public void Halves_at_two_packs_are_apart() =>
        Expect.One(
            Rule,
            Show(Cable("box/out/1", "rack/in/1"), Cable("box/out/2", "rack/in/4")),
            Severity.Error,
            "/feeds/0/to/0",
            "The halves of 'Ears singer' do not get to one pack: left is at rack/in/1 (1L), right at rack/in/4 (2R), and singer hears half of it.",
            "left=rack/in/1",
            "right=rack/in/4",
            "feed=ears"
        );

    [Fact]
    public void A_pair_on_its_pack_on_two_packs_at_once_and_on_no_rack_are_fine()
    {
        Expect.None(Rule, Show(Cable("box/out/1-2", "rack/in/1-2")));
        Expect.None(Rule, Show(Cable("box/out/1-2", "rack/in/1-2"), Cable("box/out/1-2", "rack/in/3-4")));
        Expect.None(Rule, Show());
    }

    [Fact]
    public void A_pair_whose_own_output_is_one_off_as_well_is_told_once()
    {
        var show = Cabled(EarRig.Show(Ears("ears", "desk/aux/2-3", "box/out/2-3")).WithRack(StereoRack), Cable("box/out/1-4", "rack/in/1-4"));
        Assert.Single(RuleTester.Findings(Rule, show));
        Expect.None(new PairOffParity(), show);
    }
}
