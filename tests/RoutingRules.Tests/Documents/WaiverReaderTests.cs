using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Waivers;

namespace RoutingRules.Tests.Documents;

public sealed class WaiverReaderTests
{
    private const string Good = """
        { "schemaVersion": 1, "waivers": [
          { "rule": "output-stray", "entities": [ { "role": "output", "id": "box-c/out/6" } ], "reason": "Left for the support act", "owner": "Mira",
            "expires": "2027-06-14", "scope": [ "2027/**" ] },
          { "rule": "RR3001", "fingerprint": "0123456789abcdef", "reason": "r", "owner": "o", "expires": "2027-06-14", "scope": [ "**" ] } ] }
        """;

    [Fact]
    public void Every_member_arrives_where_it_belongs()
    {
        var read = WaiverReader.Read(Encoding.UTF8.GetBytes(Good));

        Assert.True(read.IsUsable);
        Assert.Equal(
            new Waiver
            {
                Rule = "output-stray",
                Entities = [Entity.Of("output", "box-c/out/6")],
                Reason = "Left for the support act",
                Owner = "Mira",
                Expires = new DateOnly(2027, 6, 14),
                Scope = ["2027/**"],
            },
            read.Value!.Waivers[0]
        );
        Assert.Equal("0123456789abcdef", read.Value.Waivers[1].Fingerprint);
    }

    [Theory]
    [InlineData("\"reason\": \"Left for the support act\", ", "", "RR1004")]
    [InlineData("\"owner\": \"Mira\",", "", "RR1004")]
    [InlineData("\"expires\": \"2027-06-14\", \"scope\": [ \"2027/**\" ]", "\"scope\": [ \"2027/**\" ]", "RR1004")]
    [InlineData(", \"scope\": [ \"2027/**\" ]", "", "RR1004")]
    [InlineData("[ \"2027/**\" ]", "[]", "RR1006")]
    [InlineData("\"2027-06-14\", \"scope\": [ \"2027", "\"14.6.2027\", \"scope\": [ \"2027", "RR1007")]
    [InlineData("0123456789abcdef", "0123456789ABCDEF", "RR1007")]
    [InlineData("0123456789abcdef", "0123456789abcde", "RR1007")]
    [InlineData("\"fingerprint\": \"0123456789abcdef\", ", "", "RR1008")]
    [InlineData("\"rule\": \"RR3001\", ", "\"rule\": \"RR3001\", \"entities\": [ { \"role\": \"a\", \"id\": \"b\" } ], ", "RR1008")]
    [InlineData("\"rule\": \"output-stray\"", "\"rule\": \"output-stray\", \"until\": 3", "RR1002")]
    [InlineData("RR3001", "RR3*", "RR1007")]
    public void A_waiver_that_is_not_whole_is_refused_with_its_line(string from, string to, string rule)
    {
        var text = Good.Replace(from, to, StringComparison.Ordinal);
        var read = WaiverReader.Read(Encoding.UTF8.GetBytes(text));

        Assert.NotEqual(Good, text);
        Assert.False(read.IsUsable);
        Assert.Contains(rule, read.Findings.Select(finding => finding.Rule));
        Assert.All(read.Findings, finding => Assert.NotNull(finding.Line));
    }

    [Property(MaxTest = 200)]
    public Property Waivers_survive_writing_and_reading() =>
        Prop.ForAll(ModelArbitraries.Waivers(), list => WaiverReader.Read(WaiverWriter.ToUtf8(list)) is { IsUsable: true, Value: var read } && read == list);

    [Property(MaxTest = 200)]
    public Property Baselines_survive_writing_and_reading() =>
        Prop.ForAll(
            ModelArbitraries.Baselines(),
            baseline => BaselineReader.Read(BaselineWriter.ToUtf8(baseline)) is { IsUsable: true, Value: var read } && read == baseline
        );
}
