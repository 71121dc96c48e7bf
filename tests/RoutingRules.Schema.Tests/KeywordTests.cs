using System.Text.Json;
using RoutingRules.Documents.Formats;

namespace RoutingRules.Schema.Tests;

/// <summary>Every keyword that a schema uses refuses something, with both validators and with the reader.</summary>
public sealed class KeywordTests
{
    // Annotations and containers, which refuse nothing by themselves.
    private static readonly string[] Silent = ["$schema", "$id", "definitions", "description"];

    private static readonly (string Keyword, SchemaKind Kind, string Good, string Bad)[] Cases =
    [
        ("type", SchemaKind.Show, Show("""{"zones":[]}"""), Show("""{"zones":{}}""")),
        ("properties", SchemaKind.Show, Show("{}"), Show("7")),
        ("required", SchemaKind.Show, Show("""{"zones":[{"id":"a"}]}"""), Show("""{"zones":[{"walk":1}]}""")),
        ("additionalProperties", SchemaKind.Show, Show("""{"zones":[{"id":"a"}]}"""), Show("""{"zones":[{"id":"a","colour":"red"}]}""")),
        ("$ref", SchemaKind.Show, Show("""{"zones":[{"id":"a","extensions":{}}]}"""), Show("""{"zones":[{"id":"a","extensions":[]}]}""")),
        ("items", SchemaKind.Show, Show("""{"zones":[{"id":"a","near":["b"]}]}"""), Show("""{"zones":[{"id":"a","near":["b",7]}]}""")),
        ("enum", SchemaKind.Show, Show("""{"zones":[{"id":"a","side":"centre"}]}"""), Show("""{"zones":[{"id":"a","side":"center"}]}""")),
        ("pattern", SchemaKind.Show, Show("""{"zones":[{"id":"a.b"}]}"""), Show("""{"zones":[{"id":"a b"}]}""")),
        ("minimum", SchemaKind.Show, Show("""{"zones":[{"id":"a","walk":1}]}"""), Show("""{"zones":[{"id":"a","walk":0}]}""")),
        ("maximum", SchemaKind.Show, Show("""{"zones":[{"id":"a","walk":99999}]}"""), Show("""{"zones":[{"id":"a","walk":100000}]}""")),
        ("exclusiveMinimum", SchemaKind.Show, Link("0.1"), Link("0")),
        ("minItems", SchemaKind.Show, Feed("""[{"at":"a/b/1"}]"""), Feed("[]")),
        ("oneOf", SchemaKind.Show, Feed("""[{"at":"a/b/1"}]"""), Feed("""[{"at":"a/b/1","devices":["c"]}]""")),
        ("anyOf", SchemaKind.Show, Patch("null"), Patch("7")),
        ("maxLength", SchemaKind.DeviceProfile, Profile(64), Profile(65)),
        ("maxItems", SchemaKind.Config, Order(Aims), Order(Aims + ",\"sets\"")),
        ("uniqueItems", SchemaKind.Config, Order(Aims), Order(Aims.Replace("groups", "sets", StringComparison.Ordinal))),
    ];

    private const string Aims = "\"sets\",\"groups\",\"distance\",\"order\",\"rewritten\",\"transmit-blocks\",\"receive-blocks\",\"numbers\"";

    public static TheoryData<string> Keywords => [.. Cases.Select(entry => entry.Keyword)];

    [Theory]
    [MemberData(nameof(Keywords))]
    public void A_keyword_refuses_its_bad_document_and_takes_its_good_one(string keyword)
    {
        var (_, kind, good, bad) = Cases.Single(entry => entry.Keyword == keyword);

        Assert.Equal((true, true, true), (Oracles.Reader(kind, good), Oracles.First(kind, good), Oracles.Second(kind, good)));
        Assert.Equal((false, false, false), (Oracles.Reader(kind, bad), Oracles.First(kind, bad), Oracles.Second(kind, bad)));
    }

    [Fact]
    public void No_keyword_in_use_is_without_a_case()
    {
        var used = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var kind in Enum.GetValues<SchemaKind>())
        {
            using var schema = JsonDocument.Parse(RoutingSchemas.Text(kind));
            Collect(schema.RootElement, used);
        }

        Assert.Equal(Cases.Select(entry => entry.Keyword).Concat(Silent).Order(StringComparer.Ordinal), used);
    }

    [Fact]
    public void The_report_schema_takes_a_report_and_refuses_a_changed_one()
    {
        const string Good = """
            { "schemaVersion": 1, "documents": [ { "path": "a.show.json", "status": "findings",
              "findings": [ { "rule": "RR2003", "name": "output-orphaned", "severity": "error", "message": "m",
                              "entities": [ { "role": "output", "id": "box-r/out/5" } ], "pointer": "/patch/routes/3", "line": 41, "column": 9,
                              "fingerprint": "0123456789abcdef", "fixes": [] } ],
              "rules": { "passed": 31, "notApplicable": 6, "undecided": 1, "undecidedRules": [ { "rule": "RR1", "subject": "", "reason": "r" } ] } } ],
              "summary": { "documents": 1, "errors": 1, "warnings": 0, "notes": 0, "undecided": 1 },
              "assignment": { "status": "optimal", "provenLevel": 10, "objective": [ 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 8, 1, 1, 3 ], "bounds": [],
                "placements": [ { "demand": "f/1", "at": "box-r/out/5", "why": "w" } ], "unplaced": [], "moved": [],
                "removedStreams": [], "silenced": [], "more": {} } }
            """;
        foreach (
            var (from, to) in new[]
            {
                ("", ""),
                ("\"findings\",", "\"fine\","),
                ("\"line\": 41", "\"line\": 0"),
                ("\"fixes\": []", "\"fixes\": [ 1 ]"),
                ("\"passed\": 31, ", ""),
                ("\"why\": \"w\" } ]", "\"why\": \"w\" } ], \"contradictions\": [ \"a\" ]"),
                ("\"silenced\": []", "\"silenced\": [ 1 ]"),
                ("\"silenced\": []", "\"provenNumbers\": 15"),
                ("8, 1, 1, 3", "8, 1, 1"),
                ("\"at\": \"box-r/out/5\"", "\"at\": \"box-r\""),
                ("\"summary\"", "\"total\""),
                ("\"schemaVersion\": 1", "\"schemaVersion\": 2"),
            }
        )
        {
            var text = from.Length == 0 ? Good : Good.Replace(from, to, StringComparison.Ordinal);
            var expected = from.Length == 0;

            Assert.True(expected == (text == Good), from);
            Assert.Equal((from, expected, expected), (from, Oracles.First(SchemaKind.Report, text), Oracles.Second(SchemaKind.Report, text)));
        }
    }

    private static void Collect(JsonElement schema, SortedSet<string> used)
    {
        foreach (var keyword in schema.EnumerateObject())
        {
            used.Add(keyword.Name);
            if (keyword.Name is "properties" or "definitions")
            {
                foreach (var inner in keyword.Value.EnumerateObject())
                {
                    Collect(inner.Value, used);
                }
            }
            else if (keyword.Name is "oneOf" or "anyOf")
            {
                foreach (var inner in keyword.Value.EnumerateArray())
                {
                    Collect(inner, used);
                }
            }
            else if (keyword.Value.ValueKind == JsonValueKind.Object)
            {
                Collect(keyword.Value, used);
            }
        }
    }

    private static string Show(string rig) => $$"""{"schemaVersion":1,"title":"t","rig":{{rig}} }""";

    private static string Link(string length) => Show($$"""{"links":[{"id":"l","network":"n","from":"a/b/1","to":"c/d/1","lengthMetres":{{length}} } ]}""");

    private static string Feed(string to) => $$"""{"schemaVersion":1,"title":"t","rig":{},"feeds":[{"id":"f","role":"main","source":"a/b/1","to":{{to}} } ]}""";

    private static string Patch(string from) => $$"""{"schemaVersion":1,"title":"t","rig":{},"patch":{"routes":[{"from":{{from}},"to":"a/b/1"}]} }""";

    private static string Profile(int length) => $$"""{"id":"p","kind":"{{new string('k', length)}}","name":"n","portGroups":[]}""";

    private static string Order(string aims) => $$"""{"schemaVersion":1,"assignment":{"order":[{{aims}}]} }""";
}
