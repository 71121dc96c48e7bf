using System.Text.Json;
using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Findings keep their identity when nothing but order, form or names for people change, and never share one.</summary>
[Trait("Speed", "slow")]
public sealed class IdentityPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property No_two_findings_of_a_document_share_an_identity() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var shared = Promise
                    .Engine.Check(show)
                    .Findings.GroupBy(finding => (finding.Rule, Fingerprint: finding.Fingerprint()))
                    .FirstOrDefault(group => group.Count() > 1);
                return shared is null ? null : $"{shared.Key.Rule} says with one identity: {string.Join(" and ", shared.Select(finding => finding.Message))}";
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Lists_whose_order_means_nothing_may_be_reordered() => Promise.Of(ShowArbitraries.Valid(), show => Differences(show, Reordered(show)));

    [Property(MaxTest = Promise.Cases)]
    public Property Names_for_people_may_be_changed() => Promise.Of(ShowArbitraries.Messy(), show => Differences(show, Retitled(show)));

    [Property(MaxTest = Promise.Cases)]
    public Property A_document_may_be_written_on_one_line() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var pretty = ShowWriter.ToUtf8(show);
                using var parsed = JsonDocument.Parse(pretty, new JsonDocumentOptions { MaxDepth = 200 });
                var dense = JsonSerializer.SerializeToUtf8Bytes(parsed.RootElement);
                var (before, after) = (Check(pretty), Check(dense));
                return before.SequenceEqual(after) ? null : "Identities changed with the form of the text.";
            }
        );

    [Fact]
    public void Findings_of_the_reader_have_identities_of_their_own()
    {
        var check = DocumentCheck.Run(
            Promise.Engine,
            "a",
            """{ "schemaVersion": 1, "title": "a", "title": "b", "title": "c", "rig": { "zones": [ { "id": "a", "walk": 0, "walk": 1, "walk": 2 } ] } }"""u8
        );

        Assert.True(check.Result.Findings.Count >= 5);
        Assert.Equal(check.Result.Findings.Count, check.Result.Findings.Select(finding => finding.Fingerprint()).Distinct().Count());
    }

    private static string[] Check(byte[] utf8) => [.. DocumentCheck.Run(Promise.Engine, "a", utf8).Result.Findings.Select(finding => finding.Fingerprint())];

    private static string? Differences(Show before, Show after)
    {
        var first = Promise.Engine.Check(before).Findings.ToDictionary(finding => finding.Fingerprint(), finding => $"{finding.Rule}: {finding.Message}");
        var second = Promise.Engine.Check(after).Findings.ToDictionary(finding => finding.Fingerprint(), finding => $"{finding.Rule}: {finding.Message}");
        var gone = first.Where(finding => !second.ContainsKey(finding.Key)).Select(finding => finding.Value).ToList();
        var come = second.Where(finding => !first.ContainsKey(finding.Key)).Select(finding => finding.Value).ToList();
        return gone.Count + come.Count == 0 ? null : $"gone: {string.Join(" | ", gone)}; come: {string.Join(" | ", come)}";
    }

    /// <summary>
    /// Lists turned round, in shows whose names and sinks are claimed once. The order of feeds, of their entries and of devices stays: where one
    /// output could serve two feeds, the first has it; where a feed sounds on two devices, the first counts.
    /// </summary>
    private static Show Reordered(Show show) =>
        show with
        {
            Rig = show.Rig with
            {
                Zones = Turned(show.Rig.Zones),
                Clocks = Turned(show.Rig.Clocks),
                Networks = Turned(show.Rig.Networks),
                Links = Turned(show.Rig.Links),
                Cables = Turned(show.Rig.Cables),
                Unavailable = Turned(show.Rig.Unavailable),
                Reserved = Turned(show.Rig.Reserved),
                Profiles = Turned(show.Rig.Profiles),
            },
            Lines = Turned(show.Lines),
            Patch = show.Patch with
            {
                Streams = Turned(show.Patch.Streams),
                Routes = Turned(show.Patch.Routes),
                Inputs = Turned(show.Patch.Inputs),
                Labels = Turned(show.Patch.Labels),
            },
        };

    private static Show Retitled(Show show) =>
        show with
        {
            Title = "Another title",
            Venue = "Another place",
            Revision = "Z",
            Rig = show.Rig with { Devices = [.. show.Rig.Devices.Select(device => device with { Label = $"Label of {device.Id}" })] },
            Feeds = [.. show.Feeds.Select(feed => feed with { Name = $"Mix of {feed.Id}", Notes = "n" })],
            Lines = [.. show.Lines.Select(line => line with { Name = $"Line of {line.Id}", Notes = "n" })],
        };

    private static ValueList<T> Turned<T>(ValueList<T> list) => list.Reverse().ToValueList();
}
