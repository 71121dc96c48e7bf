using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Labels.LabelRig;

namespace RoutingRules.Tests.Checking.Rules.Labels;

public sealed class LabelNowhereTests
{
    private static readonly LabelNowhere Rule = new();

    [Fact]
    public void Labels_on_a_run_of_silent_outputs_are_one_note() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/out/7", "OLD L"), Label("box/out/8", "OLD R")),
            Severity.Note,
            "/patch/labels/0",
            "box/out/7-8 are labelled 'OLD L' to 'OLD R' but carry nothing.",
            "point=box/out/7-8"
        );

    [Fact]
    public void A_label_on_a_channel_that_gets_nothing_is_noted() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("desk/channel/6", "GUEST")),
            Severity.Note,
            "/patch/labels/0",
            "desk/channel/6 is labelled 'GUEST' but carries nothing.",
            "point=desk/channel/6"
        );

    [Fact]
    public void Two_different_labels_on_one_point_are_a_warning() =>
        Expect.One(
            Rule,
            LabelRig.Show(Label("box/in/1-2", "KEYS"), Label("box/in/2", "VOX"), Label("box/in/1", "keys")),
            Severity.Warning,
            "/patch/labels/1",
            "box/in/2 has two labels, 'KEYS' and 'VOX'.",
            "labelled-twice=box/in/2"
        );

    [Fact]
    public void Silence_that_other_rules_speak_of_is_left_to_them()
    {
        // Pinned, reserved, and the place of a feed whose bus has the same label but reaches nothing.
        Expect.None(Rule, LabelRig.Show(Label("box/out/7", "MIX")) with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/7", "box/out/7")] });
        var reserved = LabelRig.Show(Label("box/out/8", "GUEST"));
        Expect.None(Rule, reserved with { Rig = reserved.Rig with { Reserved = [new() { At = At("box/out/8") }] } });
        Expect.None(
            Rule,
            LabelRig.Show(Label("box/out/7", "MIX"), Label("desk/aux/7", "Mix")) with
            {
                Feeds = [FeedTo("mix", FeedRole.Monitor, "desk/aux/7", "box")],
            }
        );
        Expect.None(Rule, LabelRig.Show(Label("box/out/7", "MIX")).With(Stream("s", "desk/transmit/5-8", "box/receive/5-7")));
    }

    [Fact]
    public void Labels_on_what_sounds_are_fine() =>
        Expect.None(Rule, LabelRig.Show(Label("box/out/1", "MIX"), Label("desk/aux/8", "SPARE"), Label("box/in/8", "SPARE")));
}
