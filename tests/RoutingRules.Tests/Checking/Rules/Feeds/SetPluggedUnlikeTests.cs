using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SetPluggedUnlikeTests
{
    private static readonly SetPluggedUnlike Rule = new();

    private static readonly Show OneBox = Mains("box/out/1", "box/out/2");

    private static readonly Show TwoBoxes = Mains("box/out/1", "box-2/out/1");

    private static Show Mains(string left, string right) =>
        Of(
            ("desk", SmallProfiles.Console),
            ("box", SmallProfiles.FreeBox),
            ("box-2", SmallProfiles.FreeBox),
            ("amp", SmallProfiles.Amplifier),
            ("amp-2", SmallProfiles.Amplifier)
        ) with
        {
            Feeds =
            [
                Feed("left", FeedRole.Main, "desk/main/1", left) with
                {
                    Set = "pa",
                    Part = "left",
                },
                Feed("right", FeedRole.Main, "desk/main/2", right) with
                {
                    Set = "pa",
                    Part = "right",
                },
            ],
            Patch = new Patch
            {
                Routes = [Route("desk/main/1-2", "desk/transmit/1-2"), Route("box/receive/1-2", "box/out/1-2"), Route("box-2/receive/2", "box-2/out/1")],
                Streams = [Stream("s", "desk/transmit/1-4", "box/receive/1-4", "box-2/receive/1-4")],
            },
        };

    private static Show Plugged(Show show, params (string From, string To)[] cables) =>
        show with
        {
            Rig = show.Rig with { Cables = cables.Select(cable => Cable(cable.From, cable.To)).ToValueList() },
        };

    [Fact]
    public void One_part_without_a_cable_is_told()
    {
        Expect.One(
            Rule,
            Plugged(OneBox, ("box/out/1", "amp/in/1")),
            Severity.Warning,
            "/feeds/0/to/0",
            "No cable leads on from box/out/2 ('right'), while 'left' goes on from box/out/1 to amp/in/1.",
            "feed=left",
            "feed=right",
            "output=box/out/1",
            "output=box/out/2"
        );
        Assert.Equal(
            "No cable leads on from box/out/1 ('left'), while 'right' goes on from box-2/out/1 to amp-2/in/1.",
            Assert.Single(RuleTester.Findings(Rule, Plugged(TwoBoxes, ("box-2/out/1", "amp-2/in/1")))).Message
        );
    }

    [Fact]
    public void Cables_that_cross_at_one_amplifier_are_told() =>
        Assert.Equal(
            "The cables cross: 'left' from box/out/1 to amp/in/2 and 'right' from box/out/2 to amp/in/1.",
            Assert.Single(RuleTester.Findings(Rule, Plugged(OneBox, ("box/out/1", "amp/in/2"), ("box/out/2", "amp/in/1")))).Message
        );

    [Fact]
    public void Plugs_at_different_numbers_of_like_amplifiers_are_told() =>
        Assert.Equal(
            "Plugged at different numbers: 'left' from box/out/1 to amp/in/1 and 'right' from box-2/out/1 to amp-2/in/3.",
            Assert.Single(RuleTester.Findings(Rule, Plugged(TwoBoxes, ("box/out/1", "amp/in/1"), ("box-2/out/1", "amp-2/in/3")))).Message
        );

    [Fact]
    public void Parts_that_are_plugged_alike_are_fine()
    {
        Expect.None(Rule, Plugged(OneBox, ("box/out/1", "amp/in/1"), ("box/out/2", "amp/in/2")));
        Expect.None(Rule, Plugged(OneBox, ("box/out/1", "amp/in/1"), ("box/out/2", "amp/in/4")));
        Expect.None(Rule, Plugged(OneBox, ("box/out/1", "amp/in/1"), ("box/out/2", "amp-2/in/1")));
        Expect.None(Rule, Plugged(TwoBoxes, ("box/out/1", "amp/in/3"), ("box-2/out/1", "amp-2/in/3")));
    }

    [Fact]
    public void Without_loudspeakers_or_where_one_part_has_several_plugs_there_is_nothing_to_compare()
    {
        Expect.None(Rule, OneBox);
        Expect.None(Rule, Plugged(OneBox, ("box/out/8", "amp/in/1")));
        Expect.None(Rule, Plugged(OneBox, ("box/out/1", "amp/in/1"), ("box/out/1", "amp/in/3")));
    }

    [Fact]
    public void Parts_that_are_patched_unlike_may_be_plugged_unlike()
    {
        var unlike = Mains("box/out/2", "box-2/out/1");

        Expect.None(Rule, Plugged(unlike, ("box/out/2", "amp/in/2"), ("box-2/out/1", "amp-2/in/1")));
        Expect.None(Rule, Plugged(unlike, ("box-2/out/1", "amp-2/in/1")));
    }
}
