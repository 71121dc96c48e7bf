using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class EvacuationUnassuredTests
{
    private static readonly EvacuationUnassured Rule = new();

    /// <summary>A voice alarm that is cabled straight to an amplifier.</summary>
    private static readonly DeviceProfile Alarm = new()
    {
        Id = new("test/alarm"),
        Kind = DeviceKind.Processor,
        Name = "Voice alarm",
        PortGroups = [SmallProfiles.Group("voice", PortKind.Source, 1), SmallProfiles.Group("out", PortKind.Output, 1) with { Level = SignalLevel.Line }],
        Routing = [SmallProfiles.Entry("voice", "out", RoutingMode.Free)],
        FactoryRoutes = [SmallProfiles.Factory("voice", 1, 1, "out", 1)],
    };

    private static Show Show(params Feed[] feeds)
    {
        var show = Of(("desk", SmallProfiles.Console), ("alarm", Alarm), ("amp", SmallProfiles.Amplifier));
        return show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "amp/in/1"), Cable("alarm/out/1", "amp/in/2")] }, Feeds = feeds.ToValueList() };
    }

    private static Feed Evacuation(string id, string source, string at, string? over = null) =>
        Feed(id, FeedRole.Evacuation, source, at) with
        {
            Override = over,
        };

    [Fact]
    public void A_feed_through_the_console_without_an_override_is_an_error() =>
        Expect.One(
            Rule,
            Show(Evacuation("evac", "desk/main/1", "desk/out/1")),
            Severity.Error,
            "/feeds/0",
            "Evacuation feed 'evac' goes only through the console 'desk' and nothing says what puts it over everything else.",
            "feed=evac"
        );

    [Fact]
    public void Either_fault_alone_is_an_error_too()
    {
        Assert.Equal(
            "Evacuation feed 'evac' goes only through the console 'desk'.",
            Assert.Single(RuleTester.Findings(Rule, Show(Evacuation("evac", "desk/main/1", "desk/out/1", "relay at the amplifiers")))).Message
        );
        Assert.Equal(
            "Evacuation feed 'evac' goes out, but nothing says what puts it over everything else.",
            Assert.Single(RuleTester.Findings(Rule, Show(Evacuation("evac", "alarm/voice/1", "alarm/out/1")))).Message
        );
    }

    [Fact]
    public void A_path_of_its_own_with_an_override_is_fine_and_excuses_a_second_one()
    {
        var own = Evacuation("evac", "alarm/voice/1", "alarm/out/1", "relay at the amplifiers");

        Expect.None(Rule, Show(own));
        Expect.None(Rule, Show(own, Evacuation("also", "desk/main/1", "desk/out/1", "mute group")));
        Expect.None(Rule, Show(Feed("pa", FeedRole.Main, "desk/main/1", "desk/out/1")));
    }

    [Fact]
    public void What_to_do_leaves_it_to_local_code_and_licensed_people()
    {
        Assert.Contains("local code", Rule.Descriptor.Remedy, StringComparison.Ordinal);
        Assert.Contains("licensed", Rule.Descriptor.Remedy, StringComparison.Ordinal);
    }
}
