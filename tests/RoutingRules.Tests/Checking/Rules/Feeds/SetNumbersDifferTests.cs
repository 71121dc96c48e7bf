using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SetNumbersDifferTests
{
    private static readonly SetNumbersDiffer Rule = new();

    private static Show Streamed =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Route("desk/main/1-2", "desk/transmit/1-2"), Route("desk/aux/1-2", "desk/transmit/3-4"), Route("desk/main/2", "desk/transmit/6"))
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/5-8"), Stream("s2", "desk/transmit/5-8", "b/receive/1-4", "a/receive/5-8"));

    private static Feed Part(string id, string part, string source, params string[] at) =>
        Feed(id, FeedRole.Main, source, at) with
        {
            Set = "main",
            Part = part,
        };

    [Fact]
    public void Left_on_one_and_right_on_two_of_the_other_box_give_one_finding() =>
        Expect.One(
            Rule,
            Streamed with
            {
                Feeds = [Part("l", "left", "desk/main/1", "a/out/1"), Part("r", "right", "desk/main/2", "b/out/2")],
            },
            Severity.Note,
            "/feeds/0/to/0",
            "The parts of set 'main' have different numbers: left at a/out/1 and right at b/out/2.",
            "set=main",
            "feed=l",
            "feed=r"
        );

    [Fact]
    public void Equal_numbers_give_none() =>
        Expect.None(Rule, Streamed with { Feeds = [Part("l", "left", "desk/main/2", "a/out/2"), Part("r", "right", "desk/main/2", "b/out/2")] });

    [Fact]
    public void Parts_on_one_device_follow_each_other_and_give_none() =>
        Expect.None(Rule, Streamed with { Feeds = [Part("l", "left", "desk/main/1", "a/out/1"), Part("r", "right", "desk/main/2", "a/out/2")] });

    [Fact]
    public void Feeds_of_the_same_part_and_feeds_without_a_set_are_not_compared()
    {
        Expect.None(Rule, Streamed with { Feeds = [Part("l", "left", "desk/main/1", "a/out/1"), Part("l2", "left", "desk/main/2", "b/out/2")] });
        Expect.None(Rule, Streamed with { Feeds = [Feed("l", FeedRole.Main, "desk/main/1", "a/out/1"), Feed("r", FeedRole.Main, "desk/main/2", "b/out/2")] });
        Expect.None(
            Rule,
            Streamed with
            {
                Feeds =
                [
                    Feed("l", FeedRole.Main, "desk/main/1", "a/out/1") with
                    {
                        Set = "main",
                    },
                    Feed("r", FeedRole.Main, "desk/main/2", "b/out/2") with
                    {
                        Set = "main",
                    },
                ],
            }
        );
    }

    [Fact]
    public void A_part_that_is_not_delivered_is_left_to_its_own_rule() =>
        Expect.None(Rule, Streamed with { Feeds = [Part("l", "left", "desk/main/1", "a/out/1"), Part("r", "right", "desk/aux/8", "b/out/2")] });

    [Fact]
    public void Entries_are_compared_in_order_and_told_once_for_the_set()
    {
        var show = Streamed with
        {
            Feeds =
            [
                Part("r", "right", "desk/main/2", "b/out/6", "b/out/2"),
                Part("l", "left", "desk/main/1", "a/out/1", "a/out/1"),
                Part("c", "centre", "desk/aux/1", "a/out/3"),
            ],
        };

        // First entries: right at b 6, left at a 1, centre at a 3. Second entries: right at b 2, left not placed twice at one point.
        Expect.One(
            Rule,
            show,
            Severity.Note,
            "/feeds/0/to/0",
            "The parts of set 'main' have different numbers: right at b/out/6, left at a/out/1 and centre at a/out/3.",
            "set=main",
            "feed=c",
            "feed=l",
            "feed=r"
        );
    }

    [Fact]
    public void Order_and_names_do_not_change_the_identity()
    {
        var feeds = new[] { Part("l", "left", "desk/main/1", "a/out/1"), Part("r", "right", "desk/main/2", "b/out/2") };
        var changed = feeds.Reverse().Select(feed => feed with { Name = "Other" }).ToValueList();

        Assert.Equal(Expect.Fingerprints(Rule, Streamed with { Feeds = [.. feeds] }), Expect.Fingerprints(Rule, Streamed with { Feeds = changed }));
    }
}
