using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Labels;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Fixing.FixExpectations;

namespace RoutingRules.Tests.Fixing;

/// <summary>What is offered for inputs, lines and labels.</summary>
public sealed class FixLineTests
{
    [Fact]
    public void A_label_on_nothing_is_taken_out_of_its_run() =>
        Expect(
            new LabelNowhere(),
            LabelRig.Show(LabelRig.Label("box/out/4-5", "SPARE")),
            FixSafety.Safe,
            "Take out the label of box/out/5",
            "change /patch/labels/0: { \"at\": \"box/out/4-5\", \"text\": \"SPARE\" } to { \"at\": \"box/out/4\", \"text\": \"SPARE\" }"
        );

    [Fact]
    public void Of_two_labels_the_first_stays_but_not_safely() =>
        Expect(
            new LabelNowhere(),
            LabelRig.Show(LabelRig.Label("box/out/1", "A"), LabelRig.Label("box/out/1", "B")),
            FixSafety.Unsafe,
            "Keep the first label of box/out/1 and take the later ones out",
            "take out /patch/labels/1: { \"at\": \"box/out/1\", \"text\": \"B\" }"
        );

    [Fact]
    public void Missing_labels_come_from_the_names_as_far_as_they_are_shown() =>
        Expect(
            new LabelMissing(),
            LabelRig.Show(LabelRig.Label("box/out/1", "ONE"), LabelRig.Label("box/out/2", "TWO")) with
            {
                Feeds = [LabelRig.Mix(1), LabelRig.Mix(2), LabelRig.Mix(3) with { Name = "Drummer's wedge" }],
            },
            FixSafety.Safe,
            "Label the points of box/out in use with the names of their feeds and lines",
            "put in at /patch/labels/2: { \"at\": \"box/out/3\", \"text\": \"Drummer's we\" }"
        );

    [Fact]
    public void Forbidden_phantom_power_goes_off_at_its_inputs_only() =>
        Expect(
            new PhantomForbidden(),
            LineRig.Show(Line("keys", "box/in/2", "desk/channel/2").Needs(PhantomNeed.Forbidden)).Inputs(LineRig.Phantom("box/in/1-3", true)),
            FixSafety.Safe,
            "Switch phantom power off at box/in/2",
            "change /patch/inputs/0: { \"at\": \"box/in/1-3\", \"phantom\": true } to { \"at\": \"box/in/1\", \"phantom\": true }",
            "put in at /patch/inputs/1: { \"at\": \"box/in/2\", \"phantom\": false }",
            "put in at /patch/inputs/2: { \"at\": \"box/in/3\", \"phantom\": true }"
        );

    [Fact]
    public void Missing_phantom_power_goes_on_with_a_caution()
    {
        var offers = Expect(
            new PhantomMissing(),
            LineRig.Show(Line("hat", "box/in/2", "desk/channel/2").Needs(PhantomNeed.Required)).Inputs(LineRig.Phantom("box/in/2", false)),
            FixSafety.Unsafe,
            "Switch phantom power on at box/in/2",
            "change /patch/inputs/0: { \"at\": \"box/in/2\", \"phantom\": false } to { \"at\": \"box/in/2\", \"phantom\": true }"
        );
        Assert.Contains("48 volts", offers[0].Caution, StringComparison.Ordinal);
    }

    [Fact]
    public void Phantom_power_that_nobody_spoke_of_is_written_down() =>
        Expect(
            new PhantomMissing(),
            LineRig.Show(Line("hat", "box/in/2", "desk/channel/2").Needs(PhantomNeed.Required)).Inputs(LineRig.Phantom("box/in/1", true)),
            FixSafety.Unsafe,
            "Switch phantom power on at box/in/2",
            "put in at /patch/inputs/1: { \"at\": \"box/in/2\", \"phantom\": true }"
        );

    [Fact]
    public void Of_two_supplies_the_first_stays_on() =>
        Expect(
            new PhantomFedTwice(),
            LineRig
                .Show()
                .Cables(Cable("split/one/1", "box/in/1"), Cable("split/two/1", "desk/in/1"))
                .Inputs(LineRig.Phantom("box/in/1", true), LineRig.Phantom("desk/in/1", true)),
            FixSafety.Unsafe,
            "Switch phantom power off at desk/in/1 and keep the first supply",
            "change /patch/inputs/1: { \"at\": \"desk/in/1\", \"phantom\": true } to { \"at\": \"desk/in/1\", \"phantom\": false }"
        );

    [Fact]
    public void Phantom_power_against_an_output_goes_off() =>
        Expect(
            new PhantomAtRisk(),
            LineRig.Show().Cables(Cable("desk/out/1", "box/in/3")).Inputs(LineRig.Phantom("box/in/3", true)),
            FixSafety.Unsafe,
            "Switch phantom power off at box/in/3",
            "change /patch/inputs/0: { \"at\": \"box/in/3\", \"phantom\": true } to { \"at\": \"box/in/3\", \"phantom\": false }"
        );

    [Fact]
    public void Of_two_gain_owners_the_first_stays() =>
        Expect(
            new GainOwnerDoubled(),
            LineRig.Show().Inputs(LineRig.Gain("box/in/1", "desk"), LineRig.Gain("box/in/1", "mon") with { Phantom = true }),
            FixSafety.Unsafe,
            "Keep the first setting of the gain at box/in/1 and take the later one out",
            "change /patch/inputs/1: { \"at\": \"box/in/1\", \"phantom\": true, \"gainOwner\": \"mon\" } to { \"at\": \"box/in/1\", \"phantom\": true }"
        );

    [Fact]
    public void Who_owns_the_gain_is_a_choice_of_the_consoles()
    {
        var fix = Assert.Single(Offers(new GainOwnerMissing(), LineRig.Show(Line("vox", "box/in/1", "desk/channel/1", "mon/channel/1"))));
        Assert.Equal(["Let desk own it; the others follow with digital trim", "Let mon own it; the others follow with digital trim"], fix.Choices);
    }

    [Fact]
    public void A_second_channel_is_set_to_nothing() =>
        Expect(
            new LineOnTwoChannels(),
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With(Route("desk/receive/1", "desk/channel/7")),
            FixSafety.Unsafe,
            "Set desk/channel/7 to nothing",
            "take out /patch/routes/0: { \"from\": \"desk/receive/1\", \"to\": \"desk/channel/7\" }",
            "put in at /patch/routes/0: { \"from\": null, \"to\": \"desk/channel/7\" }"
        );

    [Fact]
    public void A_channel_named_twice_is_taken_out_once() =>
        Expect(
            new PointRepeated(),
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1", "desk/channel/2", "desk/channel/1")),
            FixSafety.Safe,
            "Take the second desk/channel/1 out of line 'vox'",
            "change /lines/0: { \"id\": \"vox\", \"kind\": \"microphone\", \"from\": { \"at\": [ \"box/in/1\" ] }, \"to\": [ \"desk/channel/1\", "
                + "\"desk/channel/2\", \"desk/channel/1\" ] }"
                + " to { \"id\": \"vox\", \"kind\": \"microphone\", \"from\": { \"at\": [ \"box/in/1\" ] }, \"to\": [ \"desk/channel/1\", "
                + "\"desk/channel/2\" ] }"
        );

    [Fact]
    public void A_label_is_copied_from_the_source() =>
        Expect(
            new LabelDisagrees(),
            LabelRig.Show(LabelRig.Label("desk/aux/1", "ONE"), LabelRig.Label("box/out/1", "TWO")),
            FixSafety.Unsafe,
            "Label box/out/1 as desk/aux/1",
            "change /patch/labels/1: { \"at\": \"box/out/1\", \"text\": \"TWO\" } to { \"at\": \"box/out/1\", \"text\": \"ONE\" }"
        );

    [Fact]
    public void A_label_is_cut_to_what_is_shown() =>
        Expect(
            new LabelTooLong(),
            LabelRig.Show(LabelRig.Label("desk/channel/1-2", "OVERHEAD LEFT")),
            FixSafety.Unsafe,
            "Cut the labels to the 8 characters that are shown",
            "change /patch/labels/0: { \"at\": \"desk/channel/1-2\", \"text\": \"OVERHEAD LEFT\" } to { \"at\": \"desk/channel/1-2\", \"text\": \"OVERHEAD\" }"
        );
}
