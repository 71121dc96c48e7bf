using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class LineNotPatchedTests
{
    private static readonly LineNotPatched Rule = new();

    private static Show Unsent(params Line[] lines) => LineRig.Show(lines).With(Array.Empty<AudioStream>());

    [Fact]
    public void A_line_whose_slot_no_stream_reaches_is_not_patched() =>
        Expect.One(
            Rule,
            Unsent(Line("vox", "box/in/1", "desk/channel/1")),
            Severity.Error,
            "/lines/0/to/0",
            "Line 'vox' does not arrive at desk/channel/1: no stream reaches desk/receive/1.",
            "line=vox"
        );

    [Fact]
    public void A_line_that_arrives_is_patched() => Expect.None(Rule, LineRig.Show(Line("vox", "box/in/1", "desk/channel/1", "mon/channel/1")));

    [Fact]
    public void A_line_that_reaches_one_of_two_consoles_is_missing_at_the_other() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/1", "desk/channel/1", "mon/channel/1")).With(Route(null, "mon/channel/1")),
            Severity.Error,
            "/lines/0/to/1",
            "Line 'vox' arrives at desk/channel/1, but not at mon/channel/1: mon/channel/1 is set to nothing.",
            "line=vox",
            "at=mon/channel/1"
        );

    [Fact]
    public void Lines_that_one_missing_stream_silences_are_one_finding() =>
        Expect.One(
            Rule,
            Unsent(Line("c", "box/in/3", "desk/channel/3"), Line("a", "box/in/1", "desk/channel/1"), Line("b", "box/in/2", "desk/channel/2")),
            Severity.Error,
            "/lines/1/to/0",
            "3 lines do not arrive: no stream reaches desk/receive/1-3. Missing: 'a' at desk/channel/1, 'b' at desk/channel/2 and 'c' at desk/channel/3.",
            "line=a",
            "line=b",
            "line=c"
        );

    [Fact]
    public void A_channel_with_another_input_is_named_with_what_it_carries() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "box/in/2", "desk/channel/1")),
            Severity.Error,
            "/lines/0/to/0",
            "Line 'vox' does not arrive at desk/channel/1: desk/channel/1 carries box/in/1 instead.",
            "line=vox"
        );

    [Fact]
    public void Two_open_lines_cannot_both_count_at_one_input() =>
        Expect.One(
            Rule,
            LineRig.Show(
                Line("a", "box/in/1", "desk/channel/1") with
                {
                    From = new() { Devices = [new("box")] },
                },
                Line("b", "box/in/1", "desk/channel/1") with
                {
                    From = new() { Devices = [new("box")] },
                }
            ),
            Severity.Error,
            "/lines/1/to/0",
            "Line 'b' does not arrive at desk/channel/1: desk/channel/1 carries box/in/1, which counts for 'a' already.",
            "line=b"
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void An_input_counts_for_the_line_that_names_it_whichever_stands_first(bool isNamedFirst)
    {
        var named = Line("b", "box/in/1", "desk/channel/2");
        var open = Line("a", "box/in/1", "desk/channel/1") with { From = new() { Devices = [new("box")] } };
        var show = LineRig.Show(isNamedFirst ? [named, open] : [open, named]).With(Route("desk/receive/1", "desk/channel/2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            isNamedFirst ? "/lines/1/to/0" : "/lines/0/to/0",
            "Line 'a' does not arrive at desk/channel/1: desk/channel/1 carries box/in/1, which counts for 'b' already.",
            "line=a"
        );
    }

    [Fact]
    public void A_device_without_a_suitable_input_is_named() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("vox", "amp/in/1", "desk/channel/1") with { From = new() { Devices = [new("amp")] } }),
            Severity.Error,
            "/lines/0/to/0",
            "Line 'vox' does not arrive at desk/channel/1: amp has no input for it.",
            "line=vox"
        );

    [Fact]
    public void Names_of_nothing_and_broken_connections_are_left_to_their_rules()
    {
        Expect.None(
            Rule,
            LineRig.Show(Line("a", "gone/in/1", "desk/channel/1"), Line("b", "box/in/1", "gone/channel/1"), Line("c", "box/in/9", "desk/channel/1"))
        );
        Expect.None(Rule, Unsent(Line("a", "box/in/1", "desk/channel/1")).With(Stream("s", "box/transmit/1-4", "desk/receive/1-3")));
        Expect.None(
            Rule,
            LineRig.Show(Line("b", "box/in/2", "desk/channel/1")).With(Route("desk/receive/1", "desk/channel/1"), Route("desk/receive/2", "desk/channel/1"))
        );
    }

    [Fact]
    public void Swapped_and_torn_pairs_are_left_to_their_rules()
    {
        var line = Line("keys", "box/in/1-2", "desk/channel/1-2");
        Expect.None(Rule, LineRig.Show(line).With(Route("desk/receive/2", "desk/channel/1"), Route("desk/receive/1", "desk/channel/2")));
        Expect.None(Rule, LineRig.Show(line).With(Route(null, "desk/channel/2")));
    }

    [Property(MaxTest = 60)]
    public Property Without_streams_every_line_of_a_clean_show_is_named_once() =>
        Prop.ForAll(
            ShowArbitraries.Clean(),
            clean =>
            {
                var cut = clean.Show with { Patch = clean.Show.Patch with { Streams = [] } };
                var named = RuleTester.Findings(Rule, cut).SelectMany(finding => finding.Entities).Select(entity => entity.Id).Order(StringComparer.Ordinal);
                Assert.Equal(cut.Lines.Select(line => line.Id.Value).Order(StringComparer.Ordinal), named);
                Expect.None(Rule, clean.Show);
            }
        );
}
