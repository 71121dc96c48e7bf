using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Lines.LineRig;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class PhantomForbiddenTests
{
    private static readonly PhantomForbidden Rule = new();

    private static Line Keys => Line("keys", "box/in/1-2", "desk/channel/1-2").Needs(PhantomNeed.Forbidden);

    [Fact]
    public void Phantom_power_on_at_both_halves_of_a_pair_is_one_finding() =>
        Expect.One(
            Rule,
            LineRig.Show(Keys).Inputs(Phantom("box/in/1-4", true)),
            Severity.Error,
            "/patch/inputs/0",
            "Phantom power is on at box/in/1-2, but 'keys' must not get it.",
            "input=box/in/1-2"
        );

    [Fact]
    public void Phantom_power_comes_back_through_a_split() =>
        Expect.One(
            Rule,
            LineRig
                .Show(Line("ribbon", "split/in/1", "desk/channel/1").Needs(PhantomNeed.Forbidden))
                .Cables(Cable("split/one/1", "box/in/1"))
                .Inputs(Phantom("box/in/1", true)),
            Severity.Error,
            "/patch/inputs/0",
            "Phantom power is on at box/in/1, but 'ribbon' must not get it.",
            "input=box/in/1"
        );

    [Fact]
    public void Off_unsaid_elsewhere_or_behind_an_isolated_leg_is_fine()
    {
        Expect.None(Rule, LineRig.Show(Keys).Inputs(Phantom("box/in/1-2", false)));
        Expect.None(Rule, LineRig.Show(Keys).Inputs(Phantom("box/in/3", true)));
        Expect.None(Rule, LineRig.Show(Keys));
        Expect.None(
            Rule,
            LineRig
                .Show(Line("ribbon", "split/in/1", "desk/channel/1").Needs(PhantomNeed.Forbidden))
                .Cables(Cable("split/isolated/1", "box/in/1"))
                .Inputs(Phantom("box/in/1", true))
        );
    }
}
