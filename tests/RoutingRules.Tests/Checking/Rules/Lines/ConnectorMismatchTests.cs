using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

/// <remarks>Pins are outputs and sockets are inputs: common practice, no source.</remarks>
public sealed class ConnectorMismatchTests
{
    private static readonly ConnectorMismatch Rule = new();

    private static Show Joined(string? from, string? to, SignalLevel? level = null)
    {
        var sender = SmallProfiles.Box with
        {
            Id = new("test/a"),
            PortGroups = [SmallProfiles.Group("out", PortKind.Output, 1) with { Connector = Word(from), Level = level }],
            Routing = [],
        };
        var receiver = sender with
        {
            Id = new("test/b"),
            PortGroups = [SmallProfiles.Group("in", PortKind.Input, 1) with { Connector = Word(to), Level = SignalLevel.Line }],
        };
        return Of(("a", sender), ("b", receiver)).Cables(Cable("a/out/1", "b/in/1"));
    }

    [Fact]
    public void Unlike_families_of_connectors_are_a_warning() =>
        Expect.One(
            Rule,
            Joined("xlr-pins", "rj45"),
            Severity.Warning,
            "/rig/cables/0",
            "The cable from a/out/1 (xlr-pins) to b/in/1 (rj45) needs an adapter.",
            "from=a/out/1",
            "to=b/in/1"
        );

    [Theory]
    [InlineData("xlr-pins", "xlr-pins", Severity.Note)]
    [InlineData("xlr-socket", "xlr-socket", Severity.Note)]
    [InlineData("xlr-socket", "xlr-pins", Severity.Note)]
    [InlineData("xlr-pins", "jack", Severity.Note)]
    [InlineData("jack", "xlr-socket", Severity.Note)]
    [InlineData("speaker-connector", "jack", Severity.Warning)]
    [InlineData("bnc", "xlr-socket", Severity.Warning)]
    [InlineData("xlr-pins", "xlr-socket", null)]
    [InlineData("jack", "jack", null)]
    [InlineData("rj45", "rj45", null)]
    [InlineData("multipin", "xlr-socket", null)]
    [InlineData("xlr-pins", "cinema", null)]
    [InlineData(null, "xlr-pins", null)]
    public void Connectors_meet_well_or_badly(string? from, string? to, Severity? expected)
    {
        var findings = RuleTester.Findings(Rule, Joined(from, to));

        Assert.Equal(expected, findings.Count == 0 ? null : findings[0].Severity);
    }

    [Fact]
    public void Unlike_levels_are_the_graver_fault_and_told_by_their_rule() =>
        Expect.None(Rule, Joined("speaker-connector", "xlr-socket", SignalLevel.Speaker));

    private static Connector? Word(string? word) => word is null ? null : new Connector(word);
}
