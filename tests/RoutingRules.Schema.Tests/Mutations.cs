using System.Text.Json;
using System.Text.Json.Nodes;

namespace RoutingRules.Schema.Tests;

/// <summary>Changes that people and programs make by mistake, each at a random place.</summary>
internal static class Mutations
{
    private static readonly string[] Words =
    [
        "none",
        "house-left",
        "fixed",
        "free",
        "microphone",
        "line",
        "critical",
        "error",
        "process",
        "input",
        "sets",
        "power",
        "Main",
        "in--ear",
        "",
        "x y",
        "2027-06-12",
        "12.6.2027",
    ];

    private static readonly string[] Addresses =
    [
        "a/b/1",
        "a/b/1-2",
        "a/b/0",
        "a/b/01",
        "a/b/100000",
        "a/b",
        "a/b/1/2",
        "/b/1",
        "a//1",
        "a/b/1-",
        "a/b/-1",
        "a/b/x",
        "a b/c/1",
        "in/1-4",
        "in/1",
        "1-8",
        "7",
        "x/y/z",
        "p/q/r/s",
    ];

    public static IReadOnlyList<Mutation> All { get; } =
    [
        new("member removed", (node, random) => node is JsonObject { Count: > 0 } members && members.Remove(Any(members, random))),
        new(
            "member added",
            (node, random) => node is JsonObject members && members.TryAdd(Pick(["colour", "ID", "x-note", "at", "devices"], random), Value(random))
        ),
        new("member renamed", (node, random) => node is JsonObject { Count: > 0 } members && Rename(members, Any(members, random), random)),
        new(
            "extensions added",
            (node, random) =>
                node is JsonObject members && members.TryAdd("extensions", random.Next(2) == 0 ? new JsonObject { ["a"] = Value(random) } : Value(random))
        ),
        new("value of another type", (node, random) => Replace(node, Value(random))),
        new("null", (node, _) => node.Parent is not null && ReplaceWithNull(node)),
        new("number moved", (node, random) => Is(node, JsonValueKind.Number) && Replace(node, Number(random))),
        new("number as text", (node, _) => Is(node, JsonValueKind.Number) && Replace(node, node.ToJsonString())),
        new("number with decimals", (node, random) => Is(node, JsonValueKind.Number) && Replace(node, JsonNode.Parse($"{random.Next(0, 100)}.5"))),
        new("truth as text", (node, _) => node.GetValueKind() is JsonValueKind.True or JsonValueKind.False && Replace(node, node.ToJsonString())),
        new("other address", (node, random) => Is(node, JsonValueKind.String) && Replace(node, Pick(Addresses, random))),
        new("other word", (node, random) => Is(node, JsonValueKind.String) && Replace(node, Pick(Words, random))),
        new(
            "character put in",
            (node, random) =>
                Is(node, JsonValueKind.String)
                && Replace(node, Insert(node.GetValue<string>(), Pick(["\t", "\u007f", "\u0085", " ", "/", "-", "ü", "🎤", "\0"], random), random))
        ),
        new("text doubled", (node, _) => Is(node, JsonValueKind.String) && Replace(node, node.GetValue<string>() + node.GetValue<string>())),
        new("long text", (node, random) => Is(node, JsonValueKind.String) && Replace(node, new string('a', Pick([64, 65, 4096, 4097], random)))),
        new("empty text", (node, _) => Is(node, JsonValueKind.String) && Replace(node, "")),
        new("list emptied", (node, _) => node is JsonArray { Count: > 0 } list && Replace(list, new JsonArray())),
        new("entry repeated", (node, random) => node is JsonArray { Count: > 0 } list && Add(list, list[random.Next(list.Count)]?.DeepClone())),
        new("entry added", (node, random) => node is JsonArray list && Add(list, Value(random))),
        new("list in place of its entry", (node, _) => node is JsonArray { Count: > 0 } list && Replace(list, list[0]?.DeepClone())),
        new("entry in place of its list", (node, _) => node is JsonValue && Replace(node, new JsonArray(node.DeepClone()))),
    ];

    /// <summary>A changed document and what was done to it.</summary>
    /// <param name="text">A good document.</param>
    /// <param name="random">The choices.</param>
    /// <param name="done">Counts the changes by name.</param>
    public static string Apply(string text, Random random, SortedDictionary<string, int> done)
    {
        var root = JsonNode.Parse(text)!;
        for (var left = random.Next(10) == 0 ? 2 : 1; left > 0; left--)
        {
            var places = new List<JsonNode>();
            Collect(root, places);
            var mutation = All[random.Next(All.Count)];
            for (var attempt = 0; attempt < 200; attempt++)
            {
                if (mutation.Apply(places[random.Next(places.Count)], random))
                {
                    done[mutation.Name] = done.GetValueOrDefault(mutation.Name) + 1;
                    break;
                }
            }
        }

        return root.ToJsonString();
    }

    private static void Collect(JsonNode node, List<JsonNode> places)
    {
        places.Add(node);
        var children = node switch
        {
            // What other tools keep is not looked into, so that a change there would change nothing.
            JsonObject members => members.Where(member => member.Key != "extensions").Select(member => member.Value),
            JsonArray list => list,
            _ => [],
        };
        foreach (var child in children)
        {
            if (child is not null)
            {
                Collect(child, places);
            }
        }
    }

    private static bool Is(JsonNode node, JsonValueKind kind) => node.GetValueKind() == kind;

    private static bool Replace(JsonNode node, JsonNode? value)
    {
        if (node.Parent is null || JsonNode.DeepEquals(node, value))
        {
            return false;
        }

        node.ReplaceWith(value);
        return true;
    }

    private static bool ReplaceWithNull(JsonNode node)
    {
        node.ReplaceWith<JsonNode?>(null);
        return true;
    }

    private static bool Add(JsonArray list, JsonNode? value)
    {
        list.Add(value);
        return true;
    }

    private static bool Rename(JsonObject members, string name, Random random)
    {
        var value = members[name]?.DeepClone();
        members.Remove(name);
        return members.TryAdd(Insert(name, "s", random), value);
    }

    private static string Insert(string text, string part, Random random)
    {
        // Never at the very end, where "$" of some regular expressions passes over a line break; never inside a surrogate pair.
        var at = random.Next(Math.Max(1, text.Length));
        return text.Insert(at > 0 && char.IsLowSurrogate(text[at]) ? at - 1 : at, part);
    }

    private static JsonNode Number(Random random) =>
        JsonNode.Parse(
            Pick(
                [
                    "0",
                    "-1",
                    "1",
                    "2",
                    "3",
                    "64",
                    "1024",
                    "1025",
                    "7999",
                    "8000",
                    "65535",
                    "65536",
                    "99999",
                    "100000",
                    "384001",
                    "1000001",
                    "2147483648",
                    "9007199254740992",
                    "1e-9",
                    "-0.5",
                ],
                random
            )
        )!;

    private static JsonNode Value(Random random) =>
        random.Next(6) switch
        {
            0 => random.Next(-1, 50_000),
            1 => Pick(Addresses, random),
            2 => random.Next(2) == 0,
            3 => new JsonObject { ["id"] = "a" },
            4 => new JsonArray("a"),
            _ => Pick(Words, random),
        };

    private static string Any(JsonObject members, Random random) => members.ElementAt(random.Next(members.Count)).Key;

    private static T Pick<T>(T[] values, Random random) => values[random.Next(values.Length)];
}
