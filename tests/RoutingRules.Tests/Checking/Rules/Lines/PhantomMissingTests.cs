using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class PhantomMissingTests
{
    private static readonly PhantomMissing Rule = new();

    private static Line Needing(string id, string from) => Line(id, from, "desk/channel/1").Needs(PhantomNeed.Required);

    [Fact]
    public void Phantom_power_off_at_the_input_is_missing() =>
        Expect.One(
            Rule,
            LineRig.Show(Needing("vox", "box/in/1")).Inputs(Phantom("box/in/1", false)),
            Severity.Error,
            "/patch/inputs/0",
            "Phantom power is off at box/in/1, but 'vox' needs it.",
            "input=box/in/1"
        );

    [Fact]
    public void Neighbouring_inputs_are_one_finding() =>
        Expect.One(
            Rule,
            LineRig.Show(Needing("b", "box/in/2"), Needing("a", "box/in/1")).Inputs(Phantom("box/in/3", true), Phantom("box/in/1-2", false)),
            Severity.Error,
            "/patch/inputs/1",
            "Phantom power is off at box/in/1-2, but 'a' and 'b' need it.",
            "input=box/in/1-2"
        );

    [Fact]
    public void An_input_nobody_speaks_of_is_a_warning_where_others_are_spoken_of() =>
        Expect.One(
            Rule,
            LineRig.Show(Needing("vox", "box/in/1")).Inputs(Phantom("box/in/5", true)),
            Severity.Warning,
            "/rig/devices/2",
            "'vox' needs phantom power at 'box', and nothing is said about it at box/in/1.",
            "device=box",
            "input=box/in/1"
        );

    [Fact]
    public void An_input_without_a_supply_cannot_give_it() =>
        Expect.One(
            Rule,
            LineRig.Show(Needing("vox", "amp/in/1")),
            Severity.Error,
            "/lines/0/phantom",
            "Phantom power cannot come from amp/in/1, but 'vox' needs it.",
            "input=amp/in/1"
        );

    [Fact]
    public void An_isolated_leg_brings_no_phantom_power_back() =>
        Expect.One(
            Rule,
            LineRig.Show(Needing("vox", "split/in/1")).Cables(Cable("split/isolated/1", "box/in/1")).Inputs(Phantom("box/in/1", true)),
            Severity.Error,
            "/lines/0/phantom",
            "Phantom power cannot come from split/in/1, but 'vox' needs it.",
            "input=split/in/1"
        );

    [Fact]
    public void Phantom_power_that_is_on_comes_through_a_leg_that_passes_it()
    {
        Expect.None(Rule, LineRig.Show(Needing("vox", "box/in/1")).Inputs(Phantom("box/in/1", true)));
        Expect.None(Rule, LineRig.Show(Needing("vox", "split/in/1")).Cables(Cable("split/two/1", "box/in/1")).Inputs(Phantom("box/in/1", true)));
    }

    [Fact]
    public void Nothing_said_at_all_lines_without_need_and_sources_on_the_network_are_left_alone()
    {
        Expect.None(Rule, LineRig.Show(Needing("vox", "box/in/1")));
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).Inputs(Phantom("box/in/1", false)));
        Expect.None(Rule, LineRig.Show(Needing("vox", "box/in/1") with { From = new() { Source = At("desk/aux/1") } }).Inputs(Phantom("box/in/1", false)));
    }
}
