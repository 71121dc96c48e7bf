using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelMissingTests
{
    private static readonly LabelMissing Rule = new();

    [Fact]
    public void The_unlabelled_one_among_labelled_ones_is_noted() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/out/1", "A"), Label("box/out/2", "B"), Label("box/out/4", "D")) with
            {
                Feeds = [Mix(1), Mix(2), Mix(3), Mix(4)],
            },
            Severity.Note,
            "/rig/devices/1",
            "No label at box/out/3, although the others in use there have one.",
            "group=box/out",
            "point=box/out/3"
        );

    [Fact]
    public void Channels_of_lines_count_too() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("desk/channel/1", "A"), Label("desk/channel/2", "B")) with
            {
                Lines = [Line("a", "box/in/1", "desk/channel/1"), Line("b", "box/in/2", "desk/channel/2"), Line("c", "box/in/3", "desk/channel/3")],
            },
            Severity.Note,
            "/rig/devices/0",
            "No label at desk/channel/3, although the others in use there have one.",
            "group=desk/channel",
            "point=desk/channel/3"
        );

    [Fact]
    public void Whole_labelled_groups_bare_groups_and_groups_with_one_label_are_fine()
    {
        Expect.None(Rule, LabelRig.Show(Label("box/out/1-4", "A")) with { Feeds = [Mix(1), Mix(2), Mix(3), Mix(4)] });
        Expect.None(Rule, LabelRig.Show(Label("box/out/1", "A")) with { Feeds = [Mix(1), Mix(2)] });
        Expect.None(Rule, LabelRig.Show(Label("box/out/1", "A"), Label("box/out/2", "B")) with { Feeds = [Mix(1), Mix(2), Mix(3), Mix(4)] });
        Expect.None(Rule, LabelRig.Show() with { Feeds = [Mix(1), Mix(2)] });
    }
}
