using System.Runtime.CompilerServices;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Checking;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>The examples on the pages of rules are pieces of the fixtures of their tests, so that they cannot rot.</summary>
public sealed class RuleExamplesTests
{
    private const string Variable = "ROUTINGRULES_REWRITE_EXPECTED";

    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [Fact]
    public void The_kept_examples_are_those_of_the_fixtures()
    {
        var made = Text(RuleFixtures.All());
        if (Environment.GetEnvironmentVariable(Variable) == "1")
        {
            File.WriteAllText(Path.Combine(Folder(), "../../../../src/RoutingRules.Reports/FindingReports/RuleExamples.json"), made);
            Assert.Fail("The examples were written anew; look at the difference, write the catalogue, and test without the variable.");
        }

        using var kept = new StreamReader(typeof(RuleExample).Assembly.GetManifestResourceStream(RuleExample.Resource)!);
        Assert.Equal(made, kept.ReadToEnd());
    }

    [Fact]
    public void Nearly_every_rule_of_shows_has_an_example() => Assert.InRange(BuiltInRules.All.Count(rule => RuleExample.Of(rule.Descriptor.Id) is null), 0, 3);

    [Fact]
    public void Findings_of_fixtures_have_the_severities_that_rules_say_they_give() =>
        Assert.All(
            RuleFixtures.All().Values.SelectMany(fixtures => fixtures),
            fixture =>
            {
                var said = fixture.Rule.Descriptor.Severities is { IsEmpty: false } severities ? severities : [fixture.Rule.Descriptor.Severity];
                Assert.All(RuleTester.Run(fixture.Rule, fixture.Show).Findings, finding => Assert.Contains(finding.Severity, said));
            }
        );

    private static string Text(SortedDictionary<string, List<(Rule Rule, Show Show)>> fixtures)
    {
        var root = new JsonObject();
        foreach (var (id, shows) in fixtures)
        {
            if (!BuiltInRules.All.Any(rule => rule.Descriptor.Id == id) || Bad(shows) is not { } bad)
            {
                continue;
            }

            var example = new JsonObject { ["says"] = bad.Says, ["bad"] = bad.Piece };
            if (Good(shows, bad) is { } good)
            {
                example["good"] = good;
            }

            root[id] = example;
        }

        return root.ToJsonString(Layout).ReplaceLineEndings("\n") + "\n";
    }

    /// <summary>The shortest piece that a finding of the rule points at.</summary>
    private static (string Says, string Path, string Piece)? Bad(List<(Rule Rule, Show Show)> shows) =>
        shows
            .SelectMany(fixture =>
                RuleTester
                    .Run(fixture.Rule, fixture.Show)
                    .Findings.Take(1)
                    .Select(finding => (finding.Message, Path: ListOf(finding.Pointer), Piece: Piece(fixture.Show, finding.Pointer)))
            )
            .Where(found => found.Piece is not null)
            .Select(found => (found.Message, found.Path, Piece: found.Piece!))
            .OrderBy(found => found.Piece.Length)
            .ThenBy(found => found.Piece, StringComparer.Ordinal)
            .ThenBy(found => found.Message, StringComparer.Ordinal)
            .Select(found => ((string, string, string)?)found)
            .FirstOrDefault();

    /// <summary>Of the pieces of the same list in shows that pass, the one that is most like the bad one.</summary>
    private static string? Good(List<(Rule Rule, Show Show)> shows, (string Says, string Path, string Piece) bad) =>
        shows
            .Where(fixture =>
                RuleTester.Run(fixture.Rule, fixture.Show) is { Findings.IsEmpty: true, Undecided.IsEmpty: true } result && result.Rules[0].Subjects > 0
            )
            .SelectMany(fixture => Enumerable.Range(0, 4).Select(i => Piece(fixture.Show, $"{bad.Path}/{i}")))
            .OfType<string>()
            .Where(piece => piece != bad.Piece)
            .OrderByDescending(piece => Id(piece) == Id(bad.Piece))
            .ThenByDescending(piece => Likeness(piece, bad.Piece))
            .ThenBy(piece => piece, StringComparer.Ordinal)
            .FirstOrDefault();

    private static string Id(string piece) => piece.Split("\"id\": ").ElementAtOrDefault(1)?.Split(',')[0] ?? "";

    private static int Likeness(string one, string other)
    {
        var shortest = Math.Min(one.Length, other.Length);
        var start = 0;
        while (start < shortest && one[start] == other[start])
        {
            start++;
        }

        var end = 0;
        while (end < shortest - start && one[^(end + 1)] == other[^(end + 1)])
        {
            end++;
        }

        return start + end - Math.Max(one.Length, other.Length);
    }

    /// <summary>The list that a pointer goes through: <c>/feeds</c> or <c>/rig/links</c>.</summary>
    private static string ListOf(string pointer) =>
        string.Join(
            '/',
            pointer.Split('/').Take(pointer.StartsWith("/rig/", StringComparison.Ordinal) || pointer.StartsWith("/patch/", StringComparison.Ordinal) ? 3 : 2)
        );

    /// <summary>The element of a list that a pointer names, with the names of what stands around it; null where there is none.</summary>
    private static string? Piece(Show show, string pointer)
    {
        var path = ListOf(pointer);
        var rest = pointer[Math.Min(pointer.Length, path.Length + 1)..].Split('/')[0];
        JsonNode? node = JsonNode.Parse(ShowWriter.Text(show));
        var names = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        foreach (var name in names)
        {
            node = node is JsonObject ? node[name] : null;
        }

        if (node is not JsonArray list || !int.TryParse(rest, out var index) || index >= list.Count)
        {
            return null;
        }

        JsonNode piece = new JsonArray(list[index]!.DeepClone());
        foreach (var name in names.Reverse())
        {
            piece = new JsonObject { [name] = piece };
        }

        return OneLine(piece);
    }

    /// <summary>The JSON on one line, with blanks where people write them.</summary>
    private static string OneLine(JsonNode? node) =>
        node switch
        {
            JsonObject { Count: > 0 } members => $"{{ {string.Join(", ", members.Select(member => $"\"{member.Key}\": {OneLine(member.Value)}"))} }}",
            JsonArray { Count: > 0 } elements => $"[ {string.Join(", ", elements.Select(OneLine))} ]",
            null => "null",
            _ => node.ToJsonString(Layout),
        };

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
