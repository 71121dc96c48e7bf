using System.Text.Json.Nodes;
using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Checking;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>What all rules on network, clock and resilience promise together, on shows with links, clocks and supplies.</summary>
public sealed class NetworkAndResilienceRulesTests
{
    private static readonly Rule[] Rules = [.. BuiltInRules.All.Where(rule => rule.Descriptor.Family is RuleFamily.Network or RuleFamily.Resilience)];

    [Property(MaxTest = 300)]
    public Property Different_findings_have_different_identities() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var twice = All(show).GroupBy(finding => finding.Fingerprint()).FirstOrDefault(group => group.Count() > 1);
                return twice is null ? null : string.Join("\n", twice.Select(finding => $"{finding.Rule} {finding.Message}"));
            }
        );

    [Property(MaxTest = 300)]
    public Property Pointers_lead_to_a_place_in_the_written_document() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var document = JsonNode.Parse(ShowWriter.Text(show));
                return All(show).FirstOrDefault(finding => Follow(document, finding.Pointer) is null) is { } lost ? $"{lost.Rule} {lost.Pointer}" : null;
            }
        );

    [Property(MaxTest = 300)]
    public Property Labels_and_names_do_not_change_identities() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var renamed = show with
                {
                    Title = "Renamed",
                    Rig = show.Rig with
                    {
                        Devices = show.Rig.Devices.Select(device => device with { Label = $"Label of {device.Id}" }).ToValueList(),
                        Networks = show.Rig.Networks.Select(network => network with { Name = $"Name of {network.Id}" }).ToValueList(),
                    },
                    Feeds = show.Feeds.Select(feed => feed with { Name = $"Name of {feed.Id}" }).ToValueList(),
                    Lines = show.Lines.Select(line => line with { Name = $"Name of {line.Id}" }).ToValueList(),
                };
                return Identities(show).SequenceEqual(Identities(renamed)) ? null : "Names changed identities.";
            }
        );

    private static IEnumerable<string> Identities(Show show) => All(show).Select(finding => finding.Fingerprint());

    private static List<Finding> All(Show show) => [.. Rules.SelectMany(rule => RuleTester.Run(rule, show).Findings)];

    private static JsonNode? Follow(JsonNode? node, string pointer)
    {
        foreach (var part in pointer.Split('/').Skip(1))
        {
            node = node is JsonArray array ? (int.TryParse(part, out var index) && index < array.Count ? array[index] : null) : node?[part];
        }

        return node;
    }
}
