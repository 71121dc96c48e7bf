using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class IdDuplicateTests
{
    private static readonly IdDuplicate Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void Two_devices_of_one_name_give_one_finding() =>
        Expect.One(
            Rule,
            Of(("box", SmallProfiles.Box), ("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)),
            Severity.Error,
            "/rig/devices/2/id",
            "2 devices are called 'box'; only the first one can be reached by that name. Rename the other.",
            "device=box"
        );

    [Fact]
    public void Three_feeds_of_one_name_give_one_finding() =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [.. Enumerable.Range(1, 3).Select(aux => FeedTo("mix", FeedRole.Monitor, $"desk/aux/{aux}", "box"))],
            },
            Severity.Error,
            "/feeds/1/id",
            "3 feeds are called 'mix'; only the first one can be reached by that name. Rename the others.",
            "feed=mix",
            "same-id=2"
        );

    [Fact]
    public void A_feed_and_a_line_of_one_name_give_one_finding() =>
        Expect.One(
            Rule,
            Base with
            {
                Feeds = [FeedTo("keys", FeedRole.Monitor, "desk/aux/1", "box")],
                Lines = [Line("drums", "box/in/1", "desk/channel/1"), Line("keys", "box/in/2", "desk/channel/2")],
            },
            Severity.Error,
            "/lines/1/id",
            "A feed and a line are both called 'keys'; reports and placements could not tell them apart. Rename one of them.",
            "demand=keys"
        );

    [Fact]
    public void Every_list_is_looked_at()
    {
        var show = Base;
        show = show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("a") }, new() { Id = new("a") }],
                Clocks =
                [
                    new()
                    {
                        Id = new("a"),
                        SampleRate = 48_000,
                        Leader = new("desk"),
                    },
                    new()
                    {
                        Id = new("a"),
                        SampleRate = 48_000,
                        Leader = new("desk"),
                    },
                ],
                Networks = [show.Rig.Networks[0], show.Rig.Networks[0]],
                Links =
                [
                    new()
                    {
                        Id = new("a"),
                        Network = new("net"),
                        From = At("desk/net/1"),
                        To = At("box/net/1"),
                    },
                    new()
                    {
                        Id = new("a"),
                        Network = new("net"),
                        From = At("desk/net/2"),
                        To = At("box/net/2"),
                    },
                ],
                Profiles = [.. show.Rig.Profiles, SmallProfiles.Box],
            },
            Lines = [Line("a", "box/in/1", "desk/channel/1"), Line("a", "box/in/2", "desk/channel/2")],
            Patch = new() { Streams = [Stream("a", "desk/transmit/1-4"), Stream("a", "desk/transmit/5-8")] },
        };

        Assert.Equal(
            ["/lines/1/id", "/patch/streams/1/id", "/rig/clocks/1/id", "/rig/links/1/id", "/rig/networks/1/id", "/rig/profiles/2/id", "/rig/zones/1/id"],
            RuleTester.Findings(Rule, show).Select(finding => finding.Pointer)
        );
    }

    [Fact]
    public void One_name_for_things_of_different_kinds_gives_none()
    {
        var show = Base;
        Expect.None(
            Rule,
            show with
            {
                Rig = show.Rig with { Zones = [new() { Id = new("desk") }] },
                Feeds = [FeedTo("desk", FeedRole.Monitor, "desk/aux/1", "box")],
                Patch = new() { Streams = [Stream("desk", "desk/transmit/1-4", "box/receive/1-4")] },
            }
        );
    }

    [Fact]
    public void Names_that_differ_in_case_are_two_names() => Expect.None(Rule, Of(("box", SmallProfiles.Box), ("Box", SmallProfiles.Box)));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_doubled_feed_gives_one(CleanShow clean)
    {
        var feeds = clean.Show.Feeds;

        Expect.None(Rule, clean.Show);
        Assert.Single(RuleTester.Findings(Rule, clean.Show with { Feeds = [.. feeds, feeds[0] with { Name = "again" }] }));
    }
}
