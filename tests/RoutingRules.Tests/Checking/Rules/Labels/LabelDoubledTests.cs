using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Rules;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelDoubledTests
{
    private static readonly LabelDoubled Rule = new();

    [Fact]
    public void One_text_on_two_mixes_is_doubled() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/out/3", "Wedge 1"), Label("box/out/1", "WEDGE1")),
            Severity.Warning,
            "/patch/labels/0/text",
            "box/out/1 and box/out/3 have the same label 'WEDGE1' but carry different sources.",
            "point=box/out/1",
            "point=box/out/3"
        );

    [Fact]
    public void Two_inputs_are_two_sources() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/in/1", "VOX"), Label("box/in/2", "VOX")),
            Severity.Warning,
            "/patch/labels/1/text",
            "box/in/1 and box/in/2 have the same label 'VOX' but carry different sources.",
            "point=box/in/1",
            "point=box/in/2"
        );

    [Fact]
    public void One_label_for_a_run_one_source_silence_and_the_other_end_are_fine()
    {
        Expect.None(Rule, LabelRig.Show(Label("box/in/1-2", "KEYS")));
        Expect.None(Rule, LabelRig.Show(Label("box/in/7", "SPARE"), Label("box/in/8", "SPARE"), Label("desk/aux/7", "SPARE"), Label("desk/aux/8", "SPARE")));
        Expect.None(Rule, LabelRig.Show(Label("box/out/7", "SPARE"), Label("box/out/8", "SPARE")));
        Expect.None(Rule, LabelRig.Show(Label("box/out/1", "MIX"), Label("desk/aux/1", "MIX")));
        Expect.None(Rule, LabelRig.Show(Label("box/receive/1", "X"), Label("box/receive/2", "X")));
    }
}
