using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

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
            "source=desk/aux/8"
        );
        Assert.DoesNotContain(RuleTester.Findings(new FeedNotDelivered(), show), finding => finding.Entities.Contains(Entity.Of("feed", "main")));
    }

    [Theory]
    [InlineData("broadcast", "click")]
    [InlineData("assistive", "comms")]
    [InlineData("evacuation", "talkback")]
    public void A_protected_feed_from_the_bus_of_a_private_one_is_an_error(string role, string kind) =>
        Expect.One(
            Rule,
            Show(Feed("air", new FeedRole(role), "desk/aux/7-8", "desk/out/1-2"), Feed("crew", new FeedRole(kind), "desk/aux/8", "box/out/8")),
            Severity.Error,
            "/feeds/0/source",
            $"Feed 'air' ({role}) takes its signal from desk/aux/8, the bus of 'crew' ({kind}).",
            "feed=air",
            "source=desk/aux/8"
        );

    [Fact]
    public void Click_in_ears_and_music_in_mains_are_meant()
    {
        Expect.None(Rule, Show(Feed("ears", FeedRole.InEar, "desk/aux/8", "desk/out/1"), Feed("click", FeedRole.Click, "desk/aux/8", "box/out/8")));
        Expect.None(
            Rule,
            Show(Feed("main", FeedRole.Main, "desk/main/1", "desk/out/1"), Feed("wedge", FeedRole.Monitor, "desk/aux/8", "box/out/8"))
                .With(Route("desk/aux/8", "desk/out/1"))
        );
    }

    /// <summary>Four channels, each fed by the receive slot of its number until somebody changes it.</summary>
    private static DeviceProfile NetworkAmplifier { get; } =
        new()
        {
            Id = new("test/network-amplifier"),
            Kind = DeviceKind.Amplifier,
            Name = "Test network amplifier",
            PortGroups =
            [
                SmallProfiles.Group("out", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Speaker,
                },
                SmallProfiles.Group("receive", PortKind.Receive, 8) with
                {
                    BlockSize = 4,
                },
            ],
            Routing = [SmallProfiles.Entry("receive", "out", RoutingMode.Free)],
            FactoryRoutes = [SmallProfiles.Factory("receive", 1, 4, "out", 1)],
        };

    private static Show Stage(DeviceProfile profile, Feed talk, params Cable[] cables)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("pa", profile))
            .With(Route(null, "desk/transmit/1-2"), Route("desk/aux/8", "desk/transmit/3"), Route(null, "desk/transmit/4"), Route(null, "desk/out/1-2"));
        return show with { Rig = show.Rig with { Cables = cables.ToValueList() }, Feeds = [talk] };
    }

    [Theory]
    [InlineData("talkback")]
    [InlineData("click")]
    [InlineData("comms")]
    [InlineData("intercom")]
    public void Talkback_in_the_block_of_a_network_amplifier_sounds_there_by_its_factory_routes(string role)
    {
        var show = Stage(NetworkAmplifier, Feed("talk", new FeedRole(role), "desk/aux/8", "box/out/3"))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4", "pa/receive/1-4"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/patch/routes/1",
            $"Feed 'talk' ({role}) sounds at the loudspeaker of pa/out/3, where no feed has it.",
            "feed=talk",
            "loudspeaker=pa/out/3",
            "source=desk/aux/8"
        );
        Expect.None(new OutputStray(), show);
        Expect.None(new BlockChangeHitsOthers(), show);
        Expect.None(Rule, show.With([.. show.Patch.Routes, Route(null, "pa/out/3")]));
    }

    [Fact]
    public void Talkback_that_strays_down_a_cable_to_an_amplifier_or_a_powered_loudspeaker_is_an_error()
    {
        var streams = Stream("s", "desk/transmit/1-4", "box/receive/1-4");
        var powered = new DeviceProfile
        {
            Id = new("test/powered"),
            Kind = DeviceKind.Loudspeaker,
            Name = "Test loudspeaker",
            PortGroups = [SmallProfiles.Group("in", PortKind.Input, 2)],
        };
        var talk = Feed("talk", FeedRole.Talkback, "desk/aux/8", "desk/out/2");
        foreach (var (profile, end) in new[] { (SmallProfiles.Amplifier, "pa/out/1"), (powered, "pa/in/1") })
        {
            var show = Stage(profile, talk, Cable("box/out/3", "pa/in/1")).With(streams);
            show = show.With([.. show.Patch.Routes.Take(3), Route(null, "desk/out/1"), Route("desk/aux/8", "desk/out/2")]);
            Expect.One(
                Rule,
                show,
                Severity.Error,
                "/patch/routes/1",
                $"Feed 'talk' (talkback) sounds at the loudspeaker of {end}, where no feed has it.",
                "feed=talk",
                $"loudspeaker={end}",
                "source=desk/aux/8"
            );
            Expect.None(new OutputStray(), show);
        }
    }

    [Fact]
    public void Talkback_that_its_feed_sends_to_a_loudspeaker_is_meant() =>
        Expect.None(
            Rule,
            Stage(SmallProfiles.Amplifier, Feed("talk", FeedRole.Talkback, "desk/aux/8", "pa/in/1"), Cable("box/out/3", "pa/in/1"))
                .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
        );

    [Theory]
    [InlineData("fill")]
    [InlineData("sub")]
    [InlineData("delay")]
    [InlineData("outfill")]
    [InlineData("foyer")]
    public void Every_loudspeaker_of_the_house_is_protected(string role)
    {
        var show = Show(Feed("house", new FeedRole(role), "desk/main/1", "desk/out/1"), Feed("talk", FeedRole.Talkback, "desk/aux/8", "box/out/8"))
            .With(Route("desk/aux/8", "desk/out/1"));
        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            $"Feed 'house' ({role}) is pinned to desk/out/1, which carries desk/aux/8 of 'talk' (talkback).",
            "feed=house",
            "source=desk/aux/8"
        );
    }
}
