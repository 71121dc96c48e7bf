using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class LinePairSplitTests
{
    private static readonly LinePairSplit Rule = new();

    private static Line Open => Line("keys", "box/in/1-2", "desk/channel/1-2") with { From = new() { Devices = [new("box")] } };

    [Fact]
    public void Halves_from_inputs_apart_are_torn() =>
        Expect.One(
            Rule,
            LineRig.Show(Open).With(Route("desk/receive/4", "desk/channel/2")),
            Severity.Warning,
            "/lines/0/to/0",
            "The halves of the pair line 'keys' are not neighbours: desk/channel/1 carries box/in/1, desk/channel/2 carries box/in/4.",
            "line=keys",
            "points=desk/channel/1-2"
        );

    [Fact]
    public void A_half_that_does_not_arrive_is_named_with_its_cause() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("keys", "box/in/1-2", "desk/channel/1-2")).With(Route(null, "desk/channel/2")),
            Severity.Warning,
            "/lines/0/to/0",
            "Only half of the pair line 'keys' arrives at desk/channel/1-2; desk/channel/2 does not get it: desk/channel/2 is set to nothing.",
            "line=keys",
            "points=desk/channel/1-2"
        );

    [Fact]
    public void A_whole_pair_a_swapped_pair_and_a_missing_pair_are_not_torn()
    {
        Expect.None(Rule, LineRig.Show(Open));
        Expect.None(Rule, LineRig.Show(Open).With(Route("desk/receive/2", "desk/channel/1"), Route("desk/receive/1", "desk/channel/2")));
        Expect.None(Rule, LineRig.Show(Open).With(Route(null, "desk/channel/1-2")));
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/2")));
    }
}
