using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class FillOneSidedTests
{
    private static readonly FillOneSided Rule = new();

    private static readonly Feed Mains = Feed("pa", FeedRole.Main, "desk/main/1-2", "desk/out/1-2") with { Name = "PA" };

    private static Show Show(params Feed[] feeds) => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with { Feeds = feeds.ToValueList() };

    private static Feed Fill(string id, string source) => FeedTo(id, FeedRole.Fill, source, "box");

    [Fact]
    public void A_single_fill_from_one_half_of_the_mains_is_told()
    {
        Expect.One(
            Rule,
            Show(Mains, Fill("front", "desk/main/2")),
            Severity.Warning,
            "/feeds/1/source",
            "Fill 'front' plays only the right side of 'PA', and no fill plays the other.",
            "feed=front",
            "source=desk/main/2"
        );
        Assert.Single(RuleTester.Findings(Rule, Show(Fill("front", "desk/main/1"), Mains)));
    }

    [Fact]
    public void The_sides_of_a_set_count_too()
    {
        var left = Feed("l", FeedRole.Main, "desk/aux/5", "box/out/1") with { Set = "main", Part = "left" };
        var right = Feed("r", FeedRole.Main, "desk/aux/7", "box/out/2") with { Set = "main", Part = "right" };

        Assert.Equal(
            "Fill 'front' plays only the left side of 'main', and no fill plays the other.",
            Assert.Single(RuleTester.Findings(Rule, Show(left, right, Fill("front", "desk/aux/5")))).Message
        );
        Expect.None(Rule, Show(left, Fill("front", "desk/aux/5")));
    }

    [Fact]
    public void A_sum_two_sides_and_a_stereo_fill_are_fine()
    {
        Expect.None(Rule, Show(Mains, Fill("front", "desk/aux/1")));
        Expect.None(Rule, Show(Mains, Fill("left", "desk/main/1"), Fill("right", "desk/main/2")));
        Expect.None(Rule, Show(Mains, Fill("front", "desk/main/1-2")));
        Expect.None(Rule, Show(Mains, FeedTo("tower", FeedRole.Delay, "desk/main/1", "box")));
    }
}
