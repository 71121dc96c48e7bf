using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Rules;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class GainOwnerDoubledTests
{
    private static readonly GainOwnerDoubled Rule = new();

    [Fact]
    public void Two_owners_of_a_run_are_one_finding() =>
        Expect.One(
            Rule,
            LineRig.Show().Inputs(Gain("box/in/1-4", "desk"), Gain("box/in/3-6", "mon")),
            Severity.Error,
            "/patch/inputs/1",
            "Two settings for box/in/3-4 disagree: the gain belongs to 'desk' and to 'mon'.",
            "gain=box/in/3-4",
            "first=box/in/1-4",
            "second=box/in/3-6"
        );

    [Fact]
    public void Phantom_power_on_and_off_disagrees_too() =>
        Expect.One(
            Rule,
            LineRig.Show().Inputs(Phantom("box/in/1", true), Phantom("box/in/1-2", false)),
            Severity.Error,
            "/patch/inputs/1",
            "Two settings for box/in/1 disagree: phantom power is on and off.",
            "phantom=box/in/1",
            "first=box/in/1",
            "second=box/in/1-2"
        );

    [Fact]
    public void Settings_that_agree_or_say_different_things_are_fine()
    {
        Expect.None(Rule, LineRig.Show().Inputs(Gain("box/in/1", "desk"), Gain("box/in/1-2", "desk")));
        Expect.None(Rule, LineRig.Show().Inputs(Gain("box/in/1", "desk"), Phantom("box/in/1", true)));
        Expect.None(Rule, LineRig.Show().Inputs(Gain("box/in/1", "desk"), Gain("box/in/2", "mon"), Gain("gone/in/1", "desk"), Gain("gone/in/1", "mon")));
    }
}
