using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelDisagreesTests
{
    private static readonly LabelDisagrees Rule = new();

    [Fact]
    public void An_output_named_otherwise_than_its_bus_disagrees() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("desk/aux/1", "MON 1"), Label("box/out/1", "SIDE L")) with
            {
                Feeds = [Mix(1)],
            },
            Severity.Warning,
            "/patch/labels/1/text",
            "box/out/1 carries desk/aux/1, but the labels differ: 'SIDE L' for 'MON 1'.",
            "point=box/out/1",
            "source=desk/aux/1"
        );

    [Fact]
    public void A_run_of_labels_that_slipped_is_one_finding() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/in/1", "KICK"), Label("box/in/2", "SNARE"), Label("desk/channel/1", "SNARE"), Label("desk/channel/2", "HAT")),
            Severity.Warning,
            "/patch/labels/2/text",
            "desk/channel/1-2 carry box/in/1-2, but the labels differ: 'SNARE' for 'KICK' and 'HAT' for 'SNARE'.",
            "point=desk/channel/1-2",
            "source=box/in/1-2"
        );

    [Fact]
    public void Spaces_capitals_and_what_a_display_cuts_do_not_count()
    {
        Expect.None(Rule, LabelRig.Show(Label("desk/aux/1", "mon1"), Label("box/out/1", "MON 1")) with { Feeds = [Mix(1)] });
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "OVERHEAD"), Label("box/in/1", "OVERHEADS")));
        Expect.None(Rule, LabelRig.Show(Label("box/out/1", "MON 1")) with { Feeds = [Mix(1)] });
    }

    [Fact]
    public void Where_something_else_is_wanted_other_rules_speak()
    {
        Expect.None(Rule, LabelRig.Show(Label("desk/aux/1", "MON 1"), Label("box/out/1", "SIDE L")) with { Feeds = [Mix(2)] });
        Expect.None(
            Rule,
            LabelRig.Show(Label("box/in/1", "KICK"), Label("desk/channel/1", "SNARE")) with
            {
                Lines = [Line("snare", "box/in/2", "desk/channel/1")],
            }
        );
    }
}
