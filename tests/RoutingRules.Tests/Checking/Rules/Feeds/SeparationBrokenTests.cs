using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SeparationBrokenTests
{
    private static readonly SeparationBroken Rule = new();

    private static Func<Feed, Feed> Apart(SeparationBy by) => feed => feed with { SeparateFrom = [new() { Feed = new("first"), By = by }] };

    [Fact]
    public void Two_feeds_on_one_device_are_not_apart() =>
        Expect.One(
            Rule,
            WaysRig.Show(Apart(SeparationBy.Device), "a/out/2"),
            Severity.Error,
            "/feeds/1/separateFrom/0",
            "'second' and 'first' were to stay apart by device, but both stand on 'a'.",
            "feed=first",
            "feed=second",
            "by=device"
        );

    [Fact]
    public void Two_devices_on_one_supply_are_not_apart() =>
        Expect.One(
            Rule,
            WaysRig.Show(Apart(SeparationBy.Power), power: "left"),
            Severity.Error,
            "/feeds/1/separateFrom/0",
            "'second' and 'first' were to stay apart by power, but both hang on supply 'left'.",
            "feed=first",
            "feed=second",
            "by=power"
        );

    [Fact]
    public void A_chain_leads_both_over_its_first_link() =>
        Expect.One(
            Rule,
            WaysRig.Show(Apart(SeparationBy.Link)),
            Severity.Error,
            "/feeds/1/separateFrom/0",
            "'second' and 'first' were to stay apart by link, but both cross link 'one'.",
            "feed=first",
            "feed=second",
            "by=link"
        );

    [Fact]
    public void Feeds_that_are_apart_and_wishes_about_nobody_are_fine()
    {
        Expect.None(Rule, WaysRig.Show(Apart(SeparationBy.Device)));
        Expect.None(Rule, WaysRig.Show(Apart(SeparationBy.Power)));
        Expect.None(Rule, WaysRig.Show(Apart(SeparationBy.Link), isRing: true));
        Expect.None(Rule, WaysRig.Show(feed => feed with { SeparateFrom = [new() { Feed = new("gone"), By = SeparationBy.Device }] }, "a/out/2"));
    }

    [Fact]
    public void A_wish_written_at_both_feeds_is_told_once()
    {
        var show = WaysRig.Show(Apart(SeparationBy.Device), "a/out/2");
        var both = show with { Feeds = [show.Feeds[0] with { SeparateFrom = [new() { Feed = new("second"), By = SeparationBy.Device }] }, show.Feeds[1]] };

        Assert.Equal("/feeds/0/separateFrom/0", Assert.Single(Testing.RuleTester.Findings(Rule, both)).Pointer);
        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, both));
    }
}
