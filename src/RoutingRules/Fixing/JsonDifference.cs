using System.Globalization;
using System.Text.Json.Nodes;

namespace RoutingRules.Fixing;

/// <summary>Finds the operations that turn one JSON document into another.</summary>
/// <remarks>
/// Objects are compared member by member, lists element by element: elements with the same <c>id</c>, or without one the same content, are the same
/// element; at equal places the leftover ones count as changed. Before each removal and replacement stands a <c>test</c>.
/// </remarks>
internal sealed class JsonDifference
{
    private readonly List<JsonPatchOperation> operations = [];

    private JsonDifference() { }

    public static List<JsonPatchOperation> Between(JsonNode? before, JsonNode? after)
    {
        var difference = new JsonDifference();
        difference.Compare("", before, after);
        return difference.operations;
    }

    private void Compare(string path, JsonNode? before, JsonNode? after)
    {
        if (JsonNode.DeepEquals(before, after))
        {
            return;
        }

        switch (before, after)
        {
            case (JsonObject old, JsonObject now):
                Members(path, old, now);
                break;
            case (JsonArray old, JsonArray now):
                Elements(path, old, now);
                break;
            default:
                Add("test", path, before);
                Add("replace", path, after);
                break;
        }
    }

    private void Members(string path, JsonObject before, JsonObject after)
    {
        foreach (var (name, value) in before)
        {
            if (!after.ContainsKey(name))
            {
                Add("test", Child(path, name), value);
                operations.Add(new JsonPatchOperation { Op = "remove", Path = Child(path, name) });
            }
        }

        foreach (var (name, value) in after)
        {
            if (before.TryGetPropertyValue(name, out var old))
            {
                Compare(Child(path, name), old, value);
            }
            else
            {
                Add("add", Child(path, name), value);
            }
        }
    }

    private void Elements(string path, JsonArray before, JsonArray after)
    {
        var partner = Partners(before, after);
        var wanted = partner.Where(index => index >= 0).ToHashSet();
        var order = Enumerable.Range(0, before.Count).ToList();
        for (var i = before.Count - 1; i >= 0; i--)
        {
            if (!wanted.Contains(i))
            {
                Add("test", Child(path, i), before[i]);
                operations.Add(new JsonPatchOperation { Op = "remove", Path = Child(path, i) });
                order.RemoveAt(i);
            }
        }

        for (var i = 0; i < after.Count; i++)
        {
            if (partner[i] < 0)
            {
                Add("add", Child(path, i), after[i]);
                order.Insert(i, -1);
                continue;
            }

            var at = order.IndexOf(partner[i]);
            if (at != i)
            {
                operations.Add(
                    new JsonPatchOperation
                    {
                        Op = "move",
                        From = Child(path, at),
                        Path = Child(path, i),
                    }
                );
                order.RemoveAt(at);
                order.Insert(i, partner[i]);
            }

            Compare(Child(path, i), before[partner[i]], after[i]);
        }
    }

    /// <summary>For each element afterwards the element before that it comes from; -1 for a new one.</summary>
    private static int[] Partners(JsonArray before, JsonArray after)
    {
        var free = new Dictionary<string, Queue<int>>(StringComparer.Ordinal);
        for (var i = 0; i < before.Count; i++)
        {
            var key = Key(before[i]);
            if (!free.TryGetValue(key, out var queue))
            {
                free.Add(key, queue = new Queue<int>());
            }

            queue.Enqueue(i);
        }

        var partner = new int[after.Count];
        for (var i = 0; i < partner.Length; i++)
        {
            partner[i] = free.TryGetValue(Key(after[i]), out var queue) && queue.TryDequeue(out var old) ? old : -1;
        }

        var taken = partner.ToHashSet();
        for (var i = 0; i < Math.Min(partner.Length, before.Count); i++)
        {
            if (partner[i] < 0 && taken.Add(i) && Id(before[i]) is null && Id(after[i]) is null)
            {
                partner[i] = i;
            }
        }

        return partner;
    }

    private static string Key(JsonNode? element) => Id(element) is { } id ? $"id {id}" : $"is {JsonPatchTarget.ToElement(element).GetRawText()}";

    private static string? Id(JsonNode? element) =>
        element is JsonObject members && members.TryGetPropertyValue("id", out var id) && id is JsonValue value && value.TryGetValue<string>(out var text)
            ? text
            : null;

    private static string Child(string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}/{index}");

    private static string Child(string path, string name) =>
        $"{path}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";

    private void Add(string op, string path, JsonNode? value) =>
        operations.Add(
            new JsonPatchOperation
            {
                Op = op,
                Path = path,
                Value = JsonPatchTarget.ToElement(value),
            }
        );
}
