using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

/// <remarks>Which levels meet without harm: common practice, no source.</remarks>
public sealed class LevelMismatchTests
{
    private static readonly LevelMismatch Rule = new();

    [Fact]
    public void A_loudspeaker_output_into_a_line_input_is_an_error() =>
        Expect.One(
            Rule,
            Of(("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier), ("amp2", SmallProfiles.Amplifier))
                .Cables(Cable("box/out/1", "amp/in/1"), Cable("amp/out/1-2", "amp2/in/1-2")),
            Severity.Error,
            "/rig/cables/1",
            "The cable from amp/out/1-2 (speaker level) goes into amp2/in/1-2 (line level).",
            "from=amp/out/1-2",
            "to=amp2/in/1-2"
        );

    [Fact]
    public void A_line_output_into_a_microphone_input_is_a_warning() =>
        Expect.One(
            Rule,
            LineRig.Show().Cables(Cable("box/out/1", "desk/in/1")),
            Severity.Warning,
            "/rig/cables/0",
            "The cable from box/out/1 (line level) goes into desk/in/1 (mic level).",
            "from=box/out/1",
            "to=desk/in/1"
        );

    [Fact]
    public void A_cable_written_twice_is_told_once() =>
        Assert.Single(RuleTester.Findings(Rule, LineRig.Show().Cables(Cable("box/out/1", "desk/in/1"), Cable("box/out/1", "desk/in/1"))));

    [Theory]
    [InlineData("aes3", "line", Severity.Error)]
    [InlineData("mic", "aes3", Severity.Error)]
    [InlineData("mic", "speaker", Severity.Error)]
    [InlineData("headphone", "line", Severity.Warning)]
    [InlineData("mic", "line", Severity.Warning)]
    [InlineData("line", "line", null)]
    [InlineData("aes3", "aes3", null)]
    [InlineData("line", "lamp", null)]
    [InlineData("line", null, null)]
    [InlineData(null, "mic", null)]
    public void Levels_meet_well_or_badly(string? from, string? to, Severity? expected)
    {
        var sender = SmallProfiles.Box with
        {
            Id = new("test/a"),
            PortGroups = [SmallProfiles.Group("out", PortKind.Output, 1) with { Level = Level(from) }],
            Routing = [],
        };
        var receiver = sender with { Id = new("test/b"), PortGroups = [SmallProfiles.Group("in", PortKind.Input, 1) with { Level = Level(to) }] };
        var findings = RuleTester.Findings(Rule, Of(("a", sender), ("b", receiver)).Cables(Cable("a/out/1", "b/in/1")));

        Assert.Equal(expected, findings.Count == 0 ? null : findings[0].Severity);
    }

    private static SignalLevel? Level(string? word) => word is null ? null : new SignalLevel(word);
}
