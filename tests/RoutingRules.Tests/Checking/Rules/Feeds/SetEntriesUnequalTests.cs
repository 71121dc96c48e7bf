using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SetEntriesUnequalTests
{
    private static readonly SetEntriesUnequal Rule = new();

    private static Show DeskAndBox => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    private static Feed Part(string id, string? part, params string[] at) => Feed(id, FeedRole.Fill, "desk/aux/1", at) with { Set = "fills", Part = part };

    [Fact]
    public void Two_destinations_against_one_give_one_finding() =>
        Expect.One(
            Rule,
            DeskAndBox with
            {
                Feeds = [Part("l", "left", "box/out/1", "box/out/3"), Part("r", "right", "box/out/2")],
            },
            Severity.Note,
            "/feeds/1/to",
            "The parts of set 'fills' have different numbers of destinations: left has 2 and right has 1.",
            "set=fills",
            "feed=l",
            "feed=r"
        );

    [Fact]
    public void Equal_numbers_give_none() => Expect.None(Rule, DeskAndBox with { Feeds = [Part("l", "left", "box/out/1"), Part("r", "right", "box/out/2")] });

    [Fact]
    public void Feeds_of_the_same_part_may_differ()
    {
        Expect.None(Rule, DeskAndBox with { Feeds = [Part("l", "left", "box/out/1", "box/out/3"), Part("l2", "left", "box/out/2")] });
        Expect.None(Rule, DeskAndBox with { Feeds = [Part("x", null, "box/out/1", "box/out/3"), Part("y", null, "box/out/2")] });
    }

    [Fact]
    public void A_set_of_one_and_feeds_without_a_set_give_none() =>
        Expect.None(Rule, DeskAndBox with { Feeds = [Part("l", "left", "box/out/1", "box/out/3"), Feed("r", FeedRole.Fill, "desk/aux/2", "box/out/2")] });

    [Fact]
    public void Three_parts_of_which_one_differs_give_one_finding_in_any_order()
    {
        var feeds = new[] { Part("l", "left", "box/out/1"), Part("c", null, "box/out/4", "box/out/5"), Part("r", "right", "box/out/2") };

        Expect.One(
            Rule,
            DeskAndBox with
            {
                Feeds = [.. feeds],
            },
            Severity.Note,
            "/feeds/1/to",
            "The parts of set 'fills' have different numbers of destinations: left has 1, 'c' has 2 and right has 1.",
            "set=fills",
            "feed=c",
            "feed=l",
            "feed=r"
        );
        Assert.Equal(
            Expect.Fingerprints(Rule, DeskAndBox with { Feeds = [.. feeds] }),
            Expect.Fingerprints(Rule, DeskAndBox with { Feeds = feeds.Reverse().ToValueList() })
        );
    }
}
