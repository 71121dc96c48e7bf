using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class GainOwnerMissingTests
{
    private static readonly GainOwnerMissing Rule = new();

    private static Line Shared(int number) => Line($"l{number}", $"box/in/{number}", $"desk/channel/{number}", $"mon/channel/{number}");

    [Fact]
    public void Inputs_of_two_consoles_without_an_owner_are_one_finding_for_the_box() =>
        Expect.One(
            Rule,
            LineRig.Show(Shared(1), Shared(2), Shared(4)).Inputs(Phantom("box/in/1", false)),
            Severity.Warning,
            "/rig/devices/2",
            "Two or more consoles get inputs of 'box' and none owns the gain: box/in/1-2 and box/in/4.",
            "device=box",
            "input=box/in/1-2",
            "input=box/in/4"
        );

    [Fact]
    public void An_owner_settles_it() => Expect.None(Rule, LineRig.Show(Shared(1)).Inputs(Gain("box/in/1", "desk", "mon")));

    [Fact]
    public void One_console_needs_no_owner() => Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1", "desk/channel/2")));

    [Fact]
    public void Consoles_behind_a_split_have_preamplifiers_of_their_own() =>
        Expect.None(
            Rule,
            LineRig
                .Show(Line("vox", "split/in/1", "desk/channel/1", "mon/channel/1"))
                .Cables(Cable("split/one/1", "desk/in/1"), Cable("split/two/1", "mon/in/1")) with
            {
                Patch = new() { Routes = [Route("desk/in/1", "desk/channel/1"), Route("mon/in/1", "mon/channel/1")] },
            }
        );
}
