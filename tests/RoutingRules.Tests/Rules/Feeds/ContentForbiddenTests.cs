using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Rules;

public sealed class ContentForbiddenTests
{
    private static readonly ContentForbidden Rule = new();

    private static Show Show(params Feed[] feeds) => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with { Feeds = feeds.ToValueList() };

    [Fact]
    public void Talkback_that_arrives_at_the_pin_of_a_main_is_an_error_and_told_once()
    {
        var show = Show(Feed("main", FeedRole.Main, "desk/main/1", "desk/out/1"), Feed("talk", FeedRole.Talkback, "desk/aux/8", "box/out/8"))
            .With(Route("desk/aux/8", "desk/out/1"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'main' (main) is pinned to desk/out/1, which carries desk/aux/8 of 'talk' (talkback).",
            "feed=main",
            "source=desk/aux/8");
        Assert.DoesNotContain(RuleTester.Findings(new FeedNotDelivered(), show), finding => finding.Entities.Contains(Entity.Of("feed", "main")));
    }

    [Theory]
    [InlineData("broadcast", "click")]
    [InlineData("assistive", "comms")]
    [InlineData("evacuation", "talkback")]
    public void A_protected_feed_from_the_bus_of_a_private_one_is_an_error(string role, string kind) => Expect.One(
        Rule,
        Show(Feed("air", new FeedRole(role), "desk/aux/7-8", "desk/out/1-2"), Feed("crew", new FeedRole(kind), "desk/aux/8", "box/out/8")),
        Severity.Error,
        "/feeds/0/source",
        $"Feed 'air' ({role}) takes its signal from desk/aux/8, the bus of 'crew' ({kind}).",
        "feed=air",
        "source=desk/aux/8");

    [Fact]
    public void Click_in_ears_and_music_in_mains_are_meant()
    {
        Expect.None(Rule, Show(Feed("ears", FeedRole.InEar, "desk/aux/8", "desk/out/1"), Feed("click", FeedRole.Click, "desk/aux/8", "box/out/8")));
        Expect.None(
            Rule,
            Show(Feed("main", FeedRole.Main, "desk/main/1", "desk/out/1"), Feed("wedge", FeedRole.Monitor, "desk/aux/8", "box/out/8")).With(Route("desk/aux/8", "desk/out/1")));
    }
}
