using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class PhantomFedTwiceTests
{
    private static readonly PhantomFedTwice Rule = new();

    private static Show Split(string second) => LineRig.Show().Cables(Cable("split/one/1-2", "box/in/1-2"), Cable(second, "desk/in/1-2"));

    [Fact]
    public void Two_legs_with_phantom_power_on_are_told_for_the_run() =>
        Expect.One(
            Rule,
            Split("split/two/1-2").Inputs(Phantom("box/in/1-2", true), Phantom("desk/in/1-2", true)),
            Severity.Error,
            "/patch/inputs/1",
            "split/in/1-2 get phantom power from more than one input: box/in/1 and desk/in/1 and the ones beside them have it on.",
            "split=split/in/1-2"
        );

    [Fact]
    public void One_supply_or_a_second_one_behind_an_isolated_leg_is_fine()
    {
        Expect.None(Rule, Split("split/two/1-2").Inputs(Phantom("box/in/1-2", true), Phantom("desk/in/1-2", false)));
        Expect.None(Rule, Split("split/isolated/1-2").Inputs(Phantom("box/in/1-2", true), Phantom("desk/in/1-2", true)));
    }

    [Fact]
    public void A_line_split_to_two_inputs_takes_one_supply()
    {
        var line = Line("vox", "box/in/1", "desk/channel/1") with { From = new() { At = [At("box/in/1"), At("mon/in/1")] } };
        Expect.One(
            Rule,
            LineRig.Show(line).Inputs(Phantom("box/in/1", true), Phantom("mon/in/1", true)),
            Severity.Error,
            "/lines/0/from",
            "Line 'vox' is split to several inputs, and more than one supplies phantom power: box/in/1 and mon/in/1.",
            "line=vox",
            "input=box/in/1",
            "input=mon/in/1"
        );
        Expect.None(Rule, LineRig.Show(line).Inputs(Phantom("box/in/1", true)));
    }
}
