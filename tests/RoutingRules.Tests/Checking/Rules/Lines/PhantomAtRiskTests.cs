using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class PhantomAtRiskTests
{
    private static readonly PhantomAtRisk Rule = new();

    [Fact]
    public void Phantom_power_against_the_output_of_a_broadcast_feed_is_named_with_the_feed() =>
        Expect.One(
            Rule,
            LineRig.Show().Cables(Cable("desk/out/1-2", "box/in/1-2")).Inputs(Phantom("box/in/1-4", true)) with
            {
                Feeds = [Feed("van", FeedRole.Broadcast, "desk/main/1-2", "desk/out/1-2")],
            },
            Severity.Warning,
            "/patch/inputs/0",
            "Phantom power is on at box/in/1-2, against the output desk/out/1-2 of 'van'.",
            "input=box/in/1-2",
            "output=desk/out/1-2"
        );

    [Fact]
    public void An_idle_line_output_is_at_risk_as_well() =>
        Expect.One(
            Rule,
            LineRig.Show().Cables(Cable("box/out/8", "desk/in/1")).Inputs(Phantom("desk/in/1", true)),
            Severity.Warning,
            "/patch/inputs/0",
            "Phantom power is on at desk/in/1, against the output box/out/8.",
            "input=desk/in/1",
            "output=box/out/8"
        );

    [Fact]
    public void Splits_isolated_outputs_and_phantom_power_that_is_off_are_fine()
    {
        var isolated = SmallProfiles.Box with
        {
            Id = new("test/isolated"),
            PortGroups = [SmallProfiles.Group("out", PortKind.Output, 1) with { Level = SignalLevel.Line, Isolated = true }],
            Routing = [],
        };
        Expect.None(Rule, LineRig.Show().Cables(Cable("split/one/1", "box/in/1")).Inputs(Phantom("box/in/1", true)));
        Expect.None(Rule, Of(("iso", isolated), ("box", SmallProfiles.Box)).Cables(Cable("iso/out/1", "box/in/1")).Inputs(Phantom("box/in/1", true)));
        Expect.None(Rule, LineRig.Show().Cables(Cable("box/out/8", "desk/in/1")).Inputs(Phantom("desk/in/1", false)));
    }

    [Fact]
    public void A_line_that_forbids_it_has_its_own_rule() =>
        Expect.None(
            Rule,
            LineRig
                .Show(Line("player", "desk/in/1", "desk/channel/1").Needs(PhantomNeed.Forbidden))
                .With(Route("desk/in/1", "desk/channel/1"))
                .Cables(Cable("box/out/8", "desk/in/1"))
                .Inputs(Phantom("desk/in/1", true))
        );

    [Fact]
    public void Phantom_power_against_a_line_at_line_level_is_named_with_the_line() =>
        Expect.One(
            Rule,
            LineRig
                .Show(Line("keys", "box/in/1-2", "desk/channel/1-2") with { Width = 2, Kind = LineKind.Line }, Line("voice", "box/in/3", "desk/channel/3"))
                .Inputs(Phantom("box/in/1-3", true)),
            Severity.Warning,
            "/patch/inputs/0",
            "Phantom power is on at box/in/1-2, against 'keys', which is at line level.",
            "input=box/in/1-2",
            "line=keys"
        );

    [Fact]
    public void A_line_at_line_level_that_is_said_to_need_it_contradicts_itself() =>
        Expect.One(
            Rule,
            LineRig
                .Show(Line("keys", "box/in/1", "desk/channel/1").Needs(PhantomNeed.Required) with { Kind = LineKind.Line })
                .Inputs(Phantom("box/in/1", true)),
            Severity.Warning,
            "/patch/inputs/0",
            "Phantom power is on at box/in/1, against 'keys', which is at line level and yet said to need it.",
            "input=box/in/1",
            "line=keys"
        );

    [Theory]
    [InlineData(LineKind.Line, false, PhantomNeed.Either)]
    [InlineData(LineKind.Line, null, PhantomNeed.Either)]
    [InlineData(LineKind.Line, true, PhantomNeed.Forbidden)]
    [InlineData(LineKind.Microphone, true, PhantomNeed.Either)]
    public void Lines_without_it_at_microphone_level_or_with_a_rule_of_their_own_are_fine(LineKind kind, bool? isOn, PhantomNeed need) =>
        Expect.None(Rule, LineRig.Show(Line("keys", "box/in/1", "desk/channel/1").Needs(need) with { Kind = kind }).Inputs(Phantom("box/in/1", isOn)));
}
