using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Rules;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelTooLongTests
{
    private static readonly LabelTooLong Rule = new();

    [Fact]
    public void Labels_longer_than_the_display_are_one_note_for_the_group() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("desk/channel/2", "OVERHEADS R"), Label("desk/channel/1", "OVERHEADS L"), Label("desk/channel/3", "KICK")),
            Severity.Note,
            "/patch/labels/1/text",
            "'desk' shows 8 characters there: desk/channel/1 'OVERHEAD' of 'OVERHEADS L' and desk/channel/2 'OVERHEAD' of 'OVERHEADS R'.",
            "point=desk/channel/1",
            "point=desk/channel/2"
        );

    [Fact]
    public void A_label_that_just_fits_and_combined_characters_are_fine()
    {
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "OVERHEAD"), Label("box/out/1", "TWELVE CHARS")));
        Expect.None(Rule, LabelRig.Show(Label("desk/channel/1", "FLO\u0308TE 12")));
    }

    [Fact]
    public void The_limit_of_the_device_counts_where_the_group_names_none() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/out/1", "THIRTEEN CHAR")),
            Severity.Note,
            "/patch/labels/0/text",
            "'box' shows 12 characters there: box/out/1 'THIRTEEN CHA' of 'THIRTEEN CHAR'.",
            "point=box/out/1"
        );
}
