using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class FillSlowerTests
{
    private static readonly FillSlower Rule = new();

    /// <summary>Mains at amplifier m, a fill at amplifier f whose processing takes so long.</summary>
    internal static Show Show(double fill, FeedRole role, params string[] cabled)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("m", SmallProfiles.Amplifier), ("f", SmallProfiles.Amplifier))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
            .WithProfile("m", profile => profile with { Through = [profile.Through[0] with { LatencyMilliseconds = 2 }] })
            .WithProfile("f", profile => profile with { Through = [profile.Through[0] with { LatencyMilliseconds = fill }] });
        return show with
        {
            Rig = show.Rig with { Cables = cabled.Select((amplifier, i) => Cable($"box/out/{i + 1}", $"{amplifier}/in/1")).ToValueList() },
            Feeds = [Feed("pa", FeedRole.Main, "desk/aux/1", "box/out/1"), Feed("lip", role, "desk/aux/2", "box/out/2")],
        };
    }

    // 2 ms behind the mains, 3.5 behind the fill: 1.5 ms more by its path.
    [Fact]
    public void A_path_more_than_a_millisecond_slower_is_noted()
    {
        foreach (var role in (FeedRole[])[FeedRole.Fill, FeedRole.Delay])
        {
            Expect.None(Rule, Show(3, role, "m", "f"));
            Expect.One(
                Rule,
                Show(3.5, role, "m", "f"),
                Severity.Note,
                "/feeds/1",
                "'lip' arrives at f/out/1, behind box/out/2, 1.5 ms later than the mains at m/out/1, behind box/out/1, and no delay is stated for it.",
                "feed=lip"
            );
        }
    }

    [Fact]
    public void A_stated_delay_other_roles_and_open_outputs_are_fine()
    {
        var show = Show(9, FeedRole.Fill, "m", "f");

        Expect.None(Rule, show with { Feeds = [show.Feeds[0], show.Feeds[1] with { DelayMilliseconds = 12 }] });
        Expect.None(Rule, Show(9, FeedRole.Monitor, "m", "f"));
        Expect.None(Rule, Show(9, FeedRole.Fill, "m"));
    }

    [Fact]
    public void The_difference_can_be_set()
    {
        Assert.Single(Set(Rule, Show(2.5, FeedRole.Fill, "m", "f"), "maximumMilliseconds", 0.4));
        Assert.Empty(Set(Rule, Show(6, FeedRole.Fill, "m", "f"), "maximumMilliseconds", 5));
    }
}
