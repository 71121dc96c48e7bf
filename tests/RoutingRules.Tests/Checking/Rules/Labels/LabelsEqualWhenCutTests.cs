using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Rules;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelsEqualWhenCutTests
{
    private static readonly LabelsEqualWhenCut Rule = new();

    [Fact]
    public void Two_labels_that_only_differ_behind_the_cut_look_alike() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("desk/channel/1", "OVERHEADS L"), Label("desk/channel/2", "OVERHEADS R")),
            Severity.Warning,
            "/patch/labels/1/text",
            "'desk' shows 'OVERHEADS L' at desk/channel/1 and 'OVERHEADS R' at desk/channel/2 alike, as 'OVERHEAD'.",
            "point=desk/channel/1",
            "point=desk/channel/2"
        );

    [Fact]
    public void Labels_that_differ_before_the_cut_and_equal_labels_are_fine()
    {
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "L OVERHEADS"), Label("desk/channel/2", "R OVERHEADS")));
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "OVERHEADS"), Label("desk/channel/2", "OVERHEADS")));
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "OVERHEADS L"), Label("box/in/1", "OVERHEADS R")));
    }
}
