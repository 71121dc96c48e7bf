using System.Text.Json.Nodes;
using FsCheck.Xunit;
using RoutingRules.Checking;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>What all rules on feeds and streams promise together.</summary>
public sealed class FeedAndStreamRulesTests
{
    private static readonly Rule[] Rules = [.. BuiltInRules.All.Where(rule => rule.Descriptor.Family is RuleFamily.Feeds or RuleFamily.Streams)];

    // These shows use the boxes to the last output, which is worth a note (RR3012) and no fault.
    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_no_finding_but_that_no_output_is_left(CleanShow clean) =>
        Assert.All(All(clean.Show), finding => Assert.Equal("RR3012", finding.Rule));

    [Property(Arbitrary = [typeof(MessyShows)], MaxTest = 400)]
    public void Different_findings_have_different_identities(MessyShow messy)
    {
        var findings = All(messy.Show);

        Assert.Equal(findings.Count, findings.Select(finding => finding.Fingerprint()).Distinct().Count());
    }

    [Property(Arbitrary = [typeof(MessyShows)])]
    public void Pointers_lead_to_a_place_in_the_written_document(MessyShow messy)
    {
        var document = JsonNode.Parse(ShowWriter.Text(messy.Show));

        Assert.All(All(messy.Show), finding => Assert.NotNull(Follow(document, finding.Pointer)));
    }

    [Property(Arbitrary = [typeof(MessyShows)])]
    public void Texts_do_not_change_identities(MessyShow messy)
    {
        var renamed = messy.Show with
        {
            Title = "Renamed",
            Rig = messy.Show.Rig with { Devices = messy.Show.Rig.Devices.Select(device => device with { Label = $"Label of {device.Id}" }).ToValueList() },
            Feeds = messy.Show.Feeds.Select(feed => feed with { Name = $"Name of {feed.Id}" }).ToValueList(),
            Lines = messy.Show.Lines.Select(line => line with { Name = $"Name of {line.Id}" }).ToValueList(),
        };

        Assert.Equal(All(messy.Show).Select(finding => finding.Fingerprint()), All(renamed).Select(finding => finding.Fingerprint()));
    }

    [Property(Arbitrary = [typeof(MessyShows)])]
    public void A_feed_is_either_missing_everywhere_or_in_part_but_never_both(MessyShow messy)
    {
        var nowhere = FeedsOf(new FeedNotDelivered(), messy.Show);
        var inPart = FeedsOf(new FanOutLost(), messy.Show);

        Assert.Empty(nowhere.Intersect(inPart));
        Assert.Equal(nowhere.Length, nowhere.Distinct().Count());
        Assert.Equal(inPart.Length, inPart.Distinct().Count());
    }

    private static string[] FeedsOf(Rule rule, Show show) =>
        [.. RuleTester.Findings(rule, show).SelectMany(finding => finding.Entities).Where(entity => entity.Role == "feed").Select(entity => entity.Id)];

    private static List<Finding> All(Show show) => [.. Rules.SelectMany(rule => RuleTester.Findings(rule, show))];

    private static JsonNode? Follow(JsonNode? node, string pointer)
    {
        foreach (var part in pointer.Split('/').Skip(1))
        {
            node = node is JsonArray array ? (int.TryParse(part, out var index) && index < array.Count ? array[index] : null) : node?[part];
        }

        return node;
    }
}
