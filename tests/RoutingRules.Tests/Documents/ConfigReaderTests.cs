using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Reading;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

public sealed class ConfigReaderTests
{
    [Fact]
    public void Every_member_arrives_where_it_belongs()
    {
        var read = Read(
            """
            { "schemaVersion": 1, "failOn": "error",
              "rules": [ { "rule": "RR2003", "enabled": false }, { "rule": "output-orphaned", "severity": "note" } ],
              "assignment": { "spares": 2, "headroom": 1, "latencyMilliseconds": 8, "inEarLatencyMilliseconds": 4.5, "keepUnlisted": true,
                "strategy": "exact", "budget": 5000000000,
                "order": [ "groups", "sets", "distance", "order", "rewritten", "transmit-blocks", "receive-blocks", "numbers" ] } }
            """
        );

        Assert.Empty(read.Findings);
        var expected = new EngineConfig
        {
            FailOn = Severity.Error,
            Rules = [new RuleSetting { Rule = "RR2003", Enabled = false }, new RuleSetting { Rule = "output-orphaned", Severity = Severity.Note }],
            Assignment = new AssignmentConfig
            {
                LatencyMilliseconds = 8,
                InEarLatencyMilliseconds = 4.5,
                Spares = 2,
                Headroom = 1,
                KeepUnlisted = true,
                Strategy = "exact",
                Budget = 5_000_000_000,
                Order =
                [
                    AssignmentAim.Groups,
                    AssignmentAim.Sets,
                    AssignmentAim.Distance,
                    AssignmentAim.Order,
                    AssignmentAim.Rewritten,
                    AssignmentAim.TransmitBlocks,
                    AssignmentAim.ReceiveBlocks,
                    AssignmentAim.Numbers,
                ],
            },
        };
        Assert.Equal(expected, read.Value);
        Assert.Equal(expected, ConfigReader.Read(ConfigWriter.ToUtf8(expected)).Value);
    }

    [Fact]
    public void An_empty_configuration_fails_on_warnings() => Assert.Equal(Severity.Warning, Read("""{"schemaVersion":1}""").Value!.FailOn);

    [Theory]
    [InlineData("""["sets"]""", "RR1006")]
    [InlineData("""["sets","sets","distance","order","rewritten","transmit-blocks","receive-blocks","numbers"]""", "RR1007")]
    [InlineData("""["sets","groups","distance","order","rewritten","transmit-blocks","receive-blocks","numbers","sets"]""", "RR1006")]
    [InlineData("""["sets","groups","distance","order","rewritten","transmit-blocks","receive-blocks","money"]""", "RR1007")]
    public void An_order_names_each_aim_once(string order, string rule) =>
        Assert.Contains(rule, Read($$"""{"schemaVersion":1,"assignment":{"order":{{order}} } }""").Findings.Select(finding => finding.Rule));

    [Theory]
    [InlineData("""{"budget":0}""")]
    [InlineData("""{"budget":9007199254740992}""")]
    [InlineData("""{"spares":-1}""")]
    public void Numbers_have_bounds(string assignment) =>
        Assert.Equal("RR1006", Assert.Single(Read($$"""{"schemaVersion":1,"assignment":{{assignment}}}""").Findings).Rule);

    private static ReadResult<EngineConfig> Read(string text) => ConfigReader.Read(Encoding.UTF8.GetBytes(text));
}
