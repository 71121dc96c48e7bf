using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class ExtensionUnresolvedTests
{
    private static readonly ExtensionUnresolved Rule = new([new() { Name = "loom-plan", HighestVersion = 2 }]);

    private static ExtensionData Data(string json) => new() { Json = json };

    private static Show With(string json) => Of(("desk", SmallProfiles.Console)) with { Extensions = Data(json) };

    [Fact]
    public void A_version_above_the_known_one_gives_one_finding() =>
        Expect.One(
            Rule,
            With("""{ "loom-plan": { "version": 3 } }"""),
            Severity.Warning,
            "/extensions/loom-plan",
            "The content of 'loom-plan' is of version 3; versions up to 2 are understood here. It is kept, but nothing acts on it.",
            "extension=loom-plan",
            "version=3"
        );

    [Theory]
    [InlineData("""{ "loom-plan": { "version": 2 } }""")]
    [InlineData("""{ "loom-plan": { "version": 1 } }""")]
    [InlineData("""{ "loom-plan": { } }""")]
    [InlineData("""{ "loom-plan": { "version": "3" } }""")]
    [InlineData("""{ "loom-plan": [ 3 ] }""")]
    [InlineData("""{ "other": { "version": 99 } }""")]
    public void Known_versions_unknown_names_and_other_shapes_give_none(string json) => Expect.None(Rule, With(json));

    [Fact]
    public void An_engine_that_knows_no_extension_has_nothing_to_look_at() =>
        Assert.Equal(
            RuleStatus.NotApplicable,
            Assert.Single(RuleTester.Run(new ExtensionUnresolved(), With("""{ "loom-plan": { "version": 3 } }""")).Rules).Status
        );

    [Fact]
    public void A_name_with_a_slash_is_escaped_in_the_pointer()
    {
        var rule = new ExtensionUnresolved([new() { Name = "a/b~c", HighestVersion = 1 }]);

        // RFC 6901, section 3: '~' is written ~0 and '/' is written ~1.
        Assert.Equal("/extensions/a~1b~0c", Assert.Single(RuleTester.Findings(rule, With("""{ "a/b~c": { "version": 2 } }"""))).Pointer);
    }

    [Fact]
    public void One_version_in_many_places_is_one_finding_at_the_first()
    {
        var newer = Data("""{ "loom-plan": { "version": 4 } }""");
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));
        show = show with
        {
            Rig = show.Rig with { Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Extensions = newer }] },
            Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1") with { To = [new() { At = At("box/out/1"), Extensions = newer }] }],
            Patch = show.Patch with { Streams = [show.Patch.Streams[0] with { To = [show.Patch.Streams[0].To[0] with { Extensions = newer }] }] },
        };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/rig/devices/1/extensions/loom-plan",
            "The content of 'loom-plan' is of version 4; versions up to 2 are understood here. It is kept, but nothing acts on it. There are 2 other places.",
            "extension=loom-plan",
            "version=4"
        );
    }
}
