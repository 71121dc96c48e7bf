using RoutingRules.Documents;

namespace RoutingRules.Tests.Documents;

/// <summary>A document given to the wrong command is named.</summary>
public class DocumentKindTests
{
    [Theory]
    [InlineData("""{ "schemaVersion": 1, "title": "T", "rig": {}, "acts": [] }""", "The document is a running order, not a show.")]
    [InlineData("""{ "schemaVersion": 1, "failOn": "note" }""", "The document is a configuration, not a show.")]
    [InlineData("""{ "schemaVersion": 1, "waivers": [] }""", "The document is a list of waivers, not a show.")]
    [InlineData("""{ "schemaVersion": 1, "documents": [] }""", "The document is a baseline, not a show.")]
    [InlineData("""{ "schemaVersion": 1, "documents": [], "coverage": {} }""", "The document is a report of a check, not a show.")]
    [InlineData("""{ "id": "a/b", "kind": "console", "portGroups": [] }""", "The document is a profile, not a show.")]
    public void What_is_no_show_is_named_once_and_nothing_else_is_said(string text, string message)
    {
        var finding = Assert.Single(ShowReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Findings);

        Assert.Equal((message, "RR1001"), (finding.Message, finding.Rule));
    }

    [Fact]
    public void A_show_given_as_running_order_or_configuration_is_named()
    {
        var show = """{ "schemaVersion": 1, "title": "T", "rig": {}, "feeds": [] }"""u8;

        Assert.Equal("The document is a show, not a running order.", Assert.Single(RunningOrderReader.Read(show).Findings).Message);
        Assert.Equal("The document is a show, not a configuration.", Assert.Single(ConfigReader.Read(show).Findings).Message);
    }

    [Theory]
    [InlineData("""{ "schemaVersion": 1, "title": "T", "rig": {}, "feads": [] }""", "RR1002")]
    [InlineData("""{ "schemaVersion": 1, "title": "T" }""", "RR1004")]
    [InlineData("""{ "schemaVersion": 1, "title": "T", "rig": {}, "acts": """, "RR1001")]
    public void A_show_with_a_mistake_stays_a_show_with_a_mistake(string text, string rule) =>
        Assert.Contains(ShowReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Findings, finding => finding.Rule == rule);

    [Fact]
    public void A_side_of_the_stage_is_told_as_the_audience_sees_it()
    {
        var text = """{ "schemaVersion": 1, "title": "T", "rig": { "zones": [ { "id": "z", "side": "stage-right" } ] } }"""u8;

        Assert.Contains(
            "did you mean house-left, which is stage right seen by the audience?",
            Assert.Single(ShowReader.Read(text).Findings).Message,
            StringComparison.Ordinal
        );
    }
}
