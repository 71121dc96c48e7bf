using System.Text.Json.Nodes;
using FsCheck.Xunit;
using RoutingRules.Checking;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>What every rule of the first two families must keep, on shows full of faults.</summary>
public sealed class DocumentAndPointRulesTests
{
    private static readonly Rule[] Rules = [.. BuiltInRules.All.Where(rule => rule.Descriptor.Family is RuleFamily.Document or RuleFamily.Points)];

    [Fact]
    public void There_are_twenty_five_rules_in_the_order_of_their_ids()
    {
        Assert.Equal(25, Rules.Length);
        Assert.Equal(Rules.Select(rule => rule.Descriptor.Id).Order(StringComparer.Ordinal), Rules.Select(rule => rule.Descriptor.Id));
        Assert.All(Rules, rule => Assert.StartsWith($"RR{(int)rule.Descriptor.Family}", rule.Descriptor.Id, StringComparison.Ordinal));
    }

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void No_rule_fails_or_reads_what_it_does_not_declare(Show show) => Assert.All(Rules, rule => Assert.Empty(RuleTester.Run(rule, show).Undecided));

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void Two_findings_of_one_rule_never_have_one_identity(Show show) =>
        Assert.All(
            Rules,
            rule =>
            {
                var fingerprints = Expect.Fingerprints(rule, show);
                Assert.Equal(fingerprints.Distinct(), fingerprints);
            }
        );

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void Every_pointer_leads_to_a_place_in_the_document(Show show)
    {
        var root = JsonNode.Parse(ShowWriter.Text(show))!;
        Assert.All(
            Rules.SelectMany(rule => RuleTester.Findings(rule, show)),
            finding => Assert.True(IsThere(root, finding.Pointer), $"{finding.Rule}: {finding.Pointer}")
        );
    }

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void Titles_names_and_the_order_of_lines_and_labels_keep_the_identities(Show show, string text)
    {
        var changed = show with
        {
            Title = text ?? "",
            Rig = show.Rig with { Devices = show.Rig.Devices.Select(device => device with { Label = "L" }).ToValueList() },
            Lines = show.Lines.Reverse().Select(line => line with { Name = "N" }).ToValueList(),
            Patch = show.Patch with { Labels = show.Patch.Labels.Reverse().Select(label => label with { Text = "other" }).ToValueList() },
        };
        Assert.All(Rules.Where(rule => rule is not NameDoubled), rule => Assert.Equal(Expect.Fingerprints(rule, show), Expect.Fingerprints(rule, changed)));
    }

    /// <summary>
    /// Every output that a route or a cable uses carries a real source, or a finding names a point or device of its chain or a feed pinned there, or its end
    /// belongs to a broken connection.
    /// </summary>
    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void No_used_output_is_silent_without_a_finding(Show show)
    {
        var resolved = ShowResolver.Resolve(show, new ProfileLibrary([]));
        var graph = resolved.Graph;
        var used = resolved
            .Routes.Where(route => route.State == ConnectionState.Connected && !route.IsNull)
            .SelectMany(route => Run(route.To, route.Model.To.Width))
            .Concat(resolved.Cables.Where(cable => cable.State == ConnectionState.Connected).SelectMany(cable => Run(cable.From, cable.Model.From.Width)))
            .Where(point => graph.GroupOf(point).Kind == PortKind.Output && graph.Via(point) != HopKind.Cleared && graph.Origin(point).IsNone);
        var named = BuiltInRules
            .All.SelectMany(rule => RuleTester.Findings(rule, show))
            .SelectMany(finding => finding.Entities.ToArray())
            .Select(entity => entity.Id)
            .ToArray();
        string[] broken =
        [
            .. resolved.Routes.Where(route => route.State != ConnectionState.Connected).Select(route => route.Model.To.ToString()),
            .. resolved.Cables.Where(cable => cable.State != ConnectionState.Connected).Select(cable => cable.Model.To.ToString()),
            .. resolved
                .Streams.SelectMany(stream =>
                    stream.Receivers.Where(receiver => stream.State != ConnectionState.Connected || receiver.State != ConnectionState.Connected)
                )
                .Select(receiver => receiver.Model.At.ToString()),
        ];
        Rule[] feedRules = [new FeedNotDelivered(), new FanOutLost()];
        var missing = feedRules
            .SelectMany(rule => RuleTester.Findings(rule, show))
            .SelectMany(finding => finding.Entities.ToArray())
            .Select(entity => entity.Id)
            .ToArray();
        var told = resolved
            .Demands.Where(demand => demand is { IsPinned: true, Feed: not null, Allowed.Count: > 0 } && missing.Contains(demand.Feed.Model.Id.Value))
            .SelectMany(demand => Run(demand.Allowed[0], demand.Width).SelectMany(point => Chain(graph, point)))
            .ToHashSet();
        Assert.All(
            used,
            output => Assert.Contains(Chain(graph, output), point => told.Contains(point) || named.Concat(broken).Any(id => Names(id, graph.Address(point))))
        );
    }

    [Property(Arbitrary = [typeof(RoughShows)], MaxTest = 200)]
    public void Outputs_called_silent_are_silent(Show show)
    {
        var graph = ShowResolver.Resolve(show, new ProfileLibrary([])).Graph;
        var outputs = RuleTester
            .Findings(new OutputOrphaned(), show)
            .Where(finding => finding.Entities[0].Role == "output")
            .Select(finding => PointRange.Parse(finding.Entities[0].Id));
        Assert.All(
            outputs.SelectMany(at => Enumerable.Range(0, at.Width).Select(i => graph.Find(at[i]))),
            point => Assert.True(graph.Origin(point).IsNone && !graph.IsLooping(point))
        );
    }

    private static List<PointIndex> Chain(SignalGraph graph, PointIndex output)
    {
        var chain = new List<PointIndex>();
        for (var point = output; !point.IsNone && !chain.Contains(point); point = graph.Upstream(point))
        {
            chain.Add(point);
        }

        return chain;
    }

    private static bool Names(string id, Point point) =>
        id == point.Device.Value
        || (
            PointRange.TryParse(id, out var range, out _)
            && range.Device == point.Device
            && range.Group == point.Group
            && range.First <= point.Number
            && point.Number <= range.Last
        );

    private static IEnumerable<PointIndex> Run(PointIndex first, int width) => Enumerable.Range(0, width).Select(i => first + i);

    private static bool IsThere(JsonNode root, string pointer)
    {
        JsonNode? node = root;
        foreach (var part in pointer.Split('/').Skip(1))
        {
            node = node is JsonArray array ? (int.Parse(part) < array.Count ? array[int.Parse(part)] : null) : node?[part];
        }

        return node is not null;
    }
}
