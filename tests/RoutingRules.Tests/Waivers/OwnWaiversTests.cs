using System.Text;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Waivers;

/// <summary>Waivers that stand in the show they are about.</summary>
public sealed class OwnWaiversTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static readonly Show Missing = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
    {
        Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/1")],
    };

    private static DocumentCheck Check(string waivers, DateOnly asOf)
    {
        var text = Encoding.UTF8.GetString(ShowWriter.Text(Missing)).TrimEnd();
        text = $"{text[..^1].TrimEnd()},\n  \"waivers\": [ {waivers} ]\n}}\n";
        return DocumentCheck.Run(Engine, new DocumentFile { Path = "a.show.json", Utf8 = Encoding.UTF8.GetBytes(text) }, asOf: asOf);
    }

    private static string Waiver(string rule, string feed, string expires = "2027-06-12") =>
        $$"""
            {
              "rule": "{{rule}}", "entities": [ { "role": "feed", "id": "{{feed}}" } ],
              "reason": "soundcheck only", "owner": "monitors", "expires": "{{expires}}"
            }
            """;

    private static string[] Found(DocumentCheck document) => [.. document.Result.Findings.Select(finding => $"{finding.Name} {finding.Pointer}")];

    [Fact]
    public void A_finding_is_excused_with_reason_owner_and_last_day()
    {
        var document = Check(Waiver("RR3001", "mix"), new DateOnly(2027, 6, 12));

        Assert.DoesNotContain(document.Result.Findings, finding => finding.Rule == "RR3001");
        var waived = Assert.Single(document.Waived);
        Assert.Equal(("RR3001", "soundcheck only", "monitors"), (waived.Finding.Rule, waived.Waiver.Reason, waived.Waiver.Owner));
    }

    [Fact]
    public void The_day_after_its_last_day_it_counts_no_more_and_is_told()
    {
        var document = Check(Waiver("RR3001", "mix"), new DateOnly(2027, 6, 13));

        Assert.Contains("feed-not-delivered /feeds/0/to/0", Found(document));
        var expired = Assert.Single(document.Result.Findings, finding => finding.Rule == "RR1011");
        Assert.Equal("/waivers/0", expired.Pointer);
        Assert.NotNull(expired.Line);
    }

    [Fact]
    public void One_that_fits_nothing_is_told()
    {
        var document = Check(Waiver("RR3001", "other"), new DateOnly(2027, 6, 1));

        Assert.Contains("waiver-stale /waivers/0", Found(document));
        Assert.Empty(document.Waived);
    }

    [Theory]
    [InlineData("RR4711", "/waivers/0/rule")]
    [InlineData("RR1001", "/waivers/0/rule")]
    public void A_faulty_one_makes_that_none_counts(string rule, string pointer)
    {
        var document = Check($"{Waiver(rule, "mix")}, {Waiver("RR3001", "mix")}", new DateOnly(2027, 6, 1));

        Assert.Contains($"value-malformed {pointer}", Found(document));
        Assert.Contains(document.Result.Findings, finding => finding.Rule == "RR3001");
    }

    [Fact]
    public void Without_a_day_they_are_left_unread_and_a_scope_is_none_of_their_members()
    {
        var scoped = Waiver("RR3001", "mix").Replace("\"owner\"", "\"scope\": [ \"**\" ], \"owner\"", StringComparison.Ordinal);

        Assert.Contains(Check(scoped, new DateOnly(2027, 6, 1)).Result.Findings, finding => finding is { Rule: "RR1002", Pointer: "/waivers/0/scope" });
    }
}
