using System.Text.Json.Nodes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>What all rules on lines, labels and hearing promise together, on clean shows and on shows full of faults.</summary>
public sealed class LineLabelAndHearingRulesTests
{
    private static readonly Rule[] Rules =
    [
        .. BuiltInRules.All.Where(rule => rule.Descriptor.Family is RuleFamily.Lines or RuleFamily.Labels or RuleFamily.Hearing),
    ];

    [Fact]
    public void There_are_twenty_seven_rules_in_the_order_of_their_ids()
    {
        Assert.Equal(27, Rules.Length);
        Assert.Equal(Rules.Select(rule => rule.Descriptor.Id).Order(StringComparer.Ordinal), Rules.Select(rule => rule.Descriptor.Id));
        Assert.All(Rules, rule => Assert.StartsWith($"RR{(int)rule.Descriptor.Family}", rule.Descriptor.Id, StringComparison.Ordinal));
    }

    [Property(MaxTest = 100)]
    public Property A_clean_show_gives_no_finding_of_any_rule() => Prop.ForAll(ShowArbitraries.Clean(), clean => Assert.Empty(All(clean.Show)));

    [Property(MaxTest = 150)]
    public Property No_rule_fails_or_reads_what_it_does_not_declare() =>
        Prop.ForAll(ShowArbitraries.Messy(), show => Assert.All(Rules, rule => Assert.Empty(RuleTester.Run(rule, Spoken(show)).Undecided)));

    [Property(MaxTest = 150)]
    public Property Different_findings_have_different_identities() =>
        Prop.ForAll(
            ShowArbitraries.Messy(),
            show =>
            {
                var fingerprints = All(Spoken(show)).Select(finding => finding.Fingerprint()).Order(StringComparer.Ordinal).ToArray();
                Assert.Equal(fingerprints.Distinct(), fingerprints);
            }
        );

    [Property(MaxTest = 150)]
    public Property Pointers_lead_to_a_place_in_the_written_document() =>
        Prop.ForAll(
            ShowArbitraries.Messy(),
            show =>
            {
                var document = JsonNode.Parse(ShowWriter.Text(Spoken(show)));
                Assert.All(All(Spoken(show)), finding => Assert.True(Follow(document, finding.Pointer) is not null, $"{finding.Rule} {finding.Pointer}"));
            }
        );

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 150)]
    public void Names_and_the_order_of_labels_do_not_change_identities_of_findings_on_lines(Show show)
    {
        var changed = show with
        {
            Title = "Renamed",
            Rig = show.Rig with { Devices = show.Rig.Devices.Select(device => device with { Label = "L" }).ToValueList() },
            Lines = show.Lines.Select(line => line with { Name = "N" }).ToValueList(),
            Patch = show.Patch with { Labels = show.Patch.Labels.Reverse().ToValueList() },
        };
        Assert.All(
            Rules.Where(rule => rule.Descriptor.Family != RuleFamily.Labels),
            rule => Assert.Equal(Expect.Fingerprints(rule, show), Expect.Fingerprints(rule, changed))
        );
    }

    /// <summary>The show with settings of inputs and labels laid over its lines and feeds: right ones, doubled ones and contradictory ones.</summary>
    private static Show Spoken(Show show)
    {
        var inputs = show
            .Lines.SelectMany(line => line.From.At)
            .Select(
                (at, index) =>
                    new InputSettings
                    {
                        At = at,
                        Phantom = (index % 3) switch
                        {
                            0 => true,
                            1 => false,
                            _ => null,
                        },
                        GainOwner = index % 4 == 3 ? null : show.Rig.Devices[index % show.Rig.Devices.Count].Id,
                        GainFollowers = [show.Rig.Devices[(index + 1) % show.Rig.Devices.Count].Id],
                    }
            );
        var labels = show
            .Feeds.Select(feed => feed.Source)
            .Concat(show.Feeds.SelectMany(feed => feed.To).Select(to => to.At).OfType<PointRange>())
            .Concat(show.Lines.SelectMany(line => line.To))
            .Concat(show.Lines.SelectMany(line => line.From.At))
            .Select((at, index) => new PointLabel { At = at, Text = $"A LONG LABEL {index % 5}" });
        return show with { Patch = show.Patch with { Inputs = inputs.ToValueList(), Labels = labels.ToValueList() } };
    }

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
