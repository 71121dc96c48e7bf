using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class SparesTooFewTests
{
    private static readonly SparesTooFew Rule = new();

    /// <summary>A box of eight outputs: one is dead, two are reserved, three are cabled, and one feed is pinned.</summary>
    private static Show Box(int pins)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"));
        return show with
        {
            Rig = show.Rig with
            {
                Cables = [Cable("box/out/6-8", "amp/in/1-3")],
                Unavailable = [new() { At = At("box/out/5") }],
                Reserved = [new() { At = At("box/out/3-4") }],
            },
            Feeds = Enumerable.Range(1, pins).Select(number => Feed($"f{number}", FeedRole.Monitor, $"desk/aux/{number}", $"box/out/{number}")).ToValueList(),
        };
    }

    [Fact]
    public void A_box_with_no_free_output_left_is_noted() =>
        Expect.One(Rule, Box(2), Severity.Note, "/rig/devices/1", "'box' serves feeds at 2 outputs and has none free.", "device=box");

    [Fact]
    public void One_free_output_is_enough_unless_more_are_asked_for()
    {
        Expect.None(Rule, Box(1));
        var more = RuleTester.Run(Rule, Box(1), [new RuleOptionValue { Name = "minimumOutputs", Value = 2 }]);
        Assert.Equal("'box' serves feeds at 1 output and has 1 free.", Assert.Single(more.Findings).Message);
        Assert.Empty(RuleTester.Run(Rule, Box(2), [new RuleOptionValue { Name = "minimumOutputs", Value = 0 }]).Findings);
    }

    [Fact]
    public void A_box_without_feeds_needs_no_spare() => Expect.None(Rule, Box(0));
}
