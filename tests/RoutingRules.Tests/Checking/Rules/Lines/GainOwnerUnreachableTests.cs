using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class GainOwnerUnreachableTests
{
    private static readonly GainOwnerUnreachable Rule = new();

    [Fact]
    public void An_owner_that_does_not_get_the_input_is_reported() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With(Stream("s", "box/transmit/1-4", "desk/receive/1-4")).Inputs(Gain("box/in/1", "mon")),
            Severity.Warning,
            "/patch/inputs/0/gainOwner",
            "The gain owner of box/in/1, 'mon', does not get that input.",
            "input=box/in/1",
            "gainOwner=mon"
        );

    [Fact]
    public void A_follower_that_is_no_console_is_reported() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).Inputs(Gain("box/in/1", "desk", "mon", "amp")),
            Severity.Warning,
            "/patch/inputs/0/gainFollowers/1",
            "The gain follower of box/in/1, 'amp', is not a console.",
            "input=box/in/1",
            "gainFollower=amp"
        );

    [Fact]
    public void Consoles_that_get_the_input_and_a_console_on_its_own_inputs_are_fine() =>
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).Inputs(Gain("box/in/1-4", "desk", "mon"), Gain("desk/in/1", "desk")));

    [Fact]
    public void Idle_inputs_unknown_consoles_and_lines_that_are_told_as_missing_are_left_alone()
    {
        Expect.None(Rule, LineRig.Show().Inputs(Gain("box/in/7", "desk")));
        Expect.None(Rule, LineRig.Show().Inputs(Gain("box/in/1", "gone"), Gain("gone/in/1", "desk")));
        Expect.None(
            Rule,
            LineRig
                .Show(Line("vox", "box/in/1", "desk/channel/1", "mon/channel/1"))
                .With(Stream("s", "box/transmit/1-4", "desk/receive/1-4"))
                .Inputs(Gain("box/in/1", "desk", "mon"))
        );
    }

    // Slot 2 of the stream comes along; nothing listens to it.
    [Fact]
    public void An_idle_input_in_the_block_of_another_is_left_alone() =>
        Expect.None(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With(Stream("s", "box/transmit/1-4", "desk/receive/1-4")).Inputs(Gain("box/in/2", "mon"))
        );
}
