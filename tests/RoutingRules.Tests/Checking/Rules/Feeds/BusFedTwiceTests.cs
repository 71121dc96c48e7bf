using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class BusFedTwiceTests
{
    private static readonly BusFedTwice Rule = new();

    private static Show Two(Feed second)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box));
        return show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("left") }, new() { Id = new("right") }],
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("left") }, show.Rig.Devices[2] with { Zone = new("right") }],
            },
            Feeds = [FeedTo("one", FeedRole.Fill, "desk/aux/1-2", "a"), second],
        };
    }

    [Fact]
    public void One_bus_for_one_zone_in_one_role_is_noted() =>
        Expect.One(
            Rule,
            Two(Feed("two", FeedRole.Fill, "desk/aux/2", "a/out/4")),
            Severity.Note,
            "/feeds/1/source",
            "Feeds 'one' and 'two' send the same bus to left in the role fill.",
            "feed=one",
            "feed=two",
            "zone=left",
            "role=fill"
        );

    [Fact]
    public void Other_roles_zones_buses_and_backups_are_meant()
    {
        Expect.None(Rule, Two(FeedTo("two", FeedRole.Delay, "desk/aux/1-2", "a")));
        Expect.None(Rule, Two(FeedTo("two", FeedRole.Fill, "desk/aux/1-2", "b")));
        Expect.None(Rule, Two(FeedTo("two", FeedRole.Fill, "desk/aux/3", "a")));
        Expect.None(Rule, Two(FeedTo("two", FeedRole.Fill, "desk/aux/1-2", "a") with { BackupOf = new("one") }));
        Expect.None(Rule, Two(FeedTo("two", FeedRole.Fill, "desk/auxx/1-2", "a")));
    }

    [Fact]
    public void Two_people_or_two_packs_on_one_mix_are_meant()
    {
        var show = Two(FeedTo("two", FeedRole.Fill, "desk/aux/1-2", "a"));

        Assert.Single(RuleTester.Findings(Rule, show));
        Expect.None(Rule, show with { Feeds = [show.Feeds[0] with { Person = "singer" }, show.Feeds[1] with { Person = "guitar" }] });
        Expect.None(Rule, show with { Feeds = [show.Feeds[0] with { Pack = "1" }, show.Feeds[1] with { Pack = "2" }] });
        Assert.Single(RuleTester.Findings(Rule, show with { Feeds = [show.Feeds[0] with { Pack = "1" }, show.Feeds[1] with { Pack = "1 " }] }));
    }
}
