using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class SocketSharedTests
{
    private static readonly SocketShared Rule = new();

    [Fact]
    public void Two_lines_at_one_socket_are_an_error() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1"), Line("snare", "box/in/1", "desk/channel/2")),
            Severity.Error,
            "/lines/1/from/at",
            "'vox' and 'snare' are both to be plugged into box/in/1.",
            "input=box/in/1",
            "line=snare",
            "line=vox"
        );

    [Fact]
    public void A_pair_over_a_pair_is_one_finding_and_over_half_of_it_names_that_half()
    {
        var keys = Line("keys", "box/in/1-2", "desk/channel/1-2");

        Assert.Equal("box/in/1-2", Assert.Single(RuleTester.Findings(Rule, LineRig.Show(keys, keys with { Id = new("more") }))).Entities[0].Id);
        Assert.Equal("box/in/2", Assert.Single(RuleTester.Findings(Rule, LineRig.Show(keys, Line("vox", "box/in/2", "desk/channel/3")))).Entities[0].Id);
        Assert.Equal(2, RuleTester.Findings(Rule, LineRig.Show(keys, Line("a", "box/in/1", "desk/channel/3"), Line("b", "box/in/2", "desk/channel/4"))).Count);
    }

    [Fact]
    public void Neighbours_splits_and_what_one_line_says_twice_are_fine()
    {
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1"), Line("snare", "box/in/2", "desk/channel/2")));
        Expect.None(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1") with { From = new() { At = [At("box/in/1"), At("mon/in/1"), At("box/in/1")] } })
        );
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/99", "desk/channel/1"), Line("snare", "box/in/99", "desk/channel/2")));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
