using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Hearing.EarRig;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class InEarSharedTests
{
    private static readonly InEarShared Rule = new();

    private static Feed Wedge(string source, string at) => Feed("wedge", FeedRole.Monitor, source, at);

    [Fact]
    public void A_wedge_pinned_to_the_output_of_an_in_ear_feed_is_an_error() =>
        Expect.One(
            Rule,
            EarRig.Show(Ears("ears", "desk/aux/1-2", "box/out/1-2"), Wedge("desk/aux/2", "box/out/2")),
            Severity.Error,
            "/feeds/1/to",
            "box/out/2 serves in-ear feed 'ears' and, in the role monitor, 'wedge'.",
            "output=box/out/2",
            "in-ear=ears",
            "feed=wedge"
        );

    [Fact]
    public void A_pin_behind_the_cable_counts_at_the_output() =>
        Expect.One(
            Rule,
            EarRig.Show(Ears("ears", "desk/aux/1", "box/out/1"), Wedge("desk/aux/1", "rack/in/1")),
            Severity.Error,
            "/feeds/1/to",
            "box/out/1 serves in-ear feed 'ears' and, in the role monitor, 'wedge'.",
            "output=box/out/1",
            "in-ear=ears",
            "feed=wedge"
        );

    [Fact]
    public void Neither_the_order_of_feeds_nor_of_entries_changes_what_a_finding_is_about()
    {
        Feed[] feeds =
        [
            Ears("a", "desk/aux/1", "box/out/2", "box/out/1"),
            Ears("b", "desk/aux/1", "box/out/1"),
            Feed("wedge", FeedRole.Monitor, "desk/aux/2", "box/out/1", "box/out/2"),
        ];
        var turned = feeds.Reverse().Select(feed => feed with { To = feed.To.Reverse().ToValueList() }).ToArray();

        Assert.Equal(2, Expect.Fingerprints(Rule, EarRig.Show(feeds)).Length);
        Assert.Equal(Expect.Fingerprints(Rule, EarRig.Show(feeds)), Expect.Fingerprints(Rule, EarRig.Show(turned)));
    }

    [Fact]
    public void Two_in_ear_feeds_and_neighbouring_outputs_are_no_second_task()
    {
        Expect.None(Rule, EarRig.Show(Ears("a", "desk/aux/1", "box/out/1"), Ears("b", "desk/aux/1", "box/out/1")));
        Expect.None(Rule, EarRig.Show(Ears("ears", "desk/aux/1", "box/out/1"), Wedge("desk/aux/2", "box/out/2")));
        Expect.None(Rule, EarRig.Show(Wedge("desk/aux/1", "box/out/1"), Feed("w2", FeedRole.Fill, "desk/aux/1", "box/out/1")));
    }

    [Fact]
    public void The_rules_about_single_feeds_leave_the_doubled_pin_out()
    {
        var show = EarRig.Show(Ears("ears", "desk/aux/1", "box/out/1"), Wedge("desk/aux/2", "box/out/1"));

        Assert.Single(Testing.RuleTester.Findings(Rule, show));
        Expect.None(new FeedNotDelivered(), show);
        var open = EarRig.Show(FeedTo("ears", FeedRole.InEar, "desk/aux/1", "rack"), Wedge("desk/aux/1", "box/out/1"));
        Assert.Single(Testing.RuleTester.Findings(Rule, open));
        Expect.None(new FeedNotDelivered(), open);
    }
}
