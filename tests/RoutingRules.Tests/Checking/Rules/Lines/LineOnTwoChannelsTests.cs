using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class LineOnTwoChannelsTests
{
    private static readonly LineOnTwoChannels Rule = new();

    [Fact]
    public void A_route_to_a_second_channel_is_noted() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With(Route("desk/receive/1", "desk/channel/7"), Route("desk/receive/1", "desk/channel/5")),
            Severity.Note,
            "/lines/0/to",
            "Line 'vox' is on desk/channel/5 and desk/channel/7 too, which it does not name.",
            "line=vox",
            "device=desk",
            "channel=desk/channel/5",
            "channel=desk/channel/7"
        );

    [Fact]
    public void A_second_channel_that_a_line_names_is_meant() =>
        Expect.None(
            Rule,
            LineRig
                .Show(Line("vox", "box/in/1", "desk/channel/1", "desk/channel/5"), Line("b", "box/in/1", "desk/channel/7"))
                .With(Route("desk/receive/1", "desk/channel/5"), Route("desk/receive/1", "desk/channel/7"))
        );

    [Fact]
    public void A_channel_left_over_from_the_factory_is_no_double_patch() =>
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/5")).With(Route("desk/receive/1", "desk/channel/5")));

    [Fact]
    public void A_console_that_the_line_does_not_name_may_do_as_it_likes() =>
        Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With(Route("mon/receive/1", "mon/channel/5")));
}
