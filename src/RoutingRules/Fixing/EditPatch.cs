using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>Turns edits of a show into a JSON Patch of its document.</summary>
/// <remarks>
/// Before each change stands a <c>test</c> of the element as the document writes it, or of a neighbour when an element is put in; an element that
/// changes in some members only keeps the others as they are written.
/// </remarks>
public static class EditPatch
{
    /// <summary>The patch.</summary>
    /// <param name="utf8Json">The document of the show, with or without a byte order mark.</param>
    /// <param name="edits">Edits that apply to the show, in order.</param>
    /// <exception cref="JsonPatchException">The edits do not fit the document.</exception>
    /// <exception cref="JsonException">The document is not sound JSON.</exception>
    public static JsonPatch Of(ReadOnlySpan<byte> utf8Json, ValueList<ShowEdit> edits)
    {
        var target = new JsonPatchTarget(JsonPatchTarget.Parse(utf8Json));
        var operations = new List<JsonPatchOperation>();
        foreach (var edit in edits)
        {
            Add(
                edit,
                target,
                operation =>
                {
                    target.Apply(operation);
                    operations.Add(operation);
                }
            );
        }

        return new JsonPatch(operations.ToValueList());
    }

    /// <summary>The patch of a show that has no document but the one it would be written as.</summary>
    /// <exception cref="JsonPatchException">The edits do not fit the show.</exception>
    public static JsonPatch Of(Show show, ValueList<ShowEdit> edits) => Of(ShowWriter.Text(show), edits);

    private static void Add(ShowEdit edit, JsonPatchTarget target, Action<JsonPatchOperation> add)
    {
        if (edit.Kind == EditKind.Insert)
        {
            Provide(edit.ListPointer, target, add);
            var count = (target.Get(edit.ListPointer) as JsonArray)?.Count ?? throw new JsonPatchException($"There is no list at '{edit.ListPointer}'.");
            if (count > 0)
            {
                var neighbour = FormattableString.Invariant($"{edit.ListPointer}/{Math.Max(0, edit.Index - 1)}");
                add(
                    new JsonPatchOperation
                    {
                        Op = "test",
                        Path = neighbour,
                        Value = JsonPatchTarget.ToElement(target.Get(neighbour)),
                    }
                );
            }

            add(
                new JsonPatchOperation
                {
                    Op = "add",
                    Path = edit.Pointer,
                    Value = ElementJson.Of(edit.AfterElement!),
                }
            );
            return;
        }

        var written = target.Get(edit.Pointer);
        add(
            new JsonPatchOperation
            {
                Op = "test",
                Path = edit.Pointer,
                Value = JsonPatchTarget.ToElement(written),
            }
        );
        if (edit.Kind == EditKind.Remove)
        {
            add(new JsonPatchOperation { Op = "remove", Path = edit.Pointer });
            return;
        }

        var before = ElementJson.Of(edit.BeforeElement!);
        var after = ElementJson.Of(edit.AfterElement!);
        var members = written as JsonObject ?? throw new JsonPatchException($"There is no object at '{edit.Pointer}'.");
        foreach (var member in before.EnumerateObject())
        {
            if (!after.TryGetProperty(member.Name, out _) && members.ContainsKey(member.Name))
            {
                add(new JsonPatchOperation { Op = "remove", Path = $"{edit.Pointer}/{member.Name}" });
            }
        }

        foreach (var member in after.EnumerateObject())
        {
            if (!before.TryGetProperty(member.Name, out var old) || !JsonElement.DeepEquals(old, member.Value))
            {
                var op = members.ContainsKey(member.Name) ? "replace" : "add";
                add(
                    new JsonPatchOperation
                    {
                        Op = op,
                        Path = $"{edit.Pointer}/{member.Name}",
                        Value = member.Value,
                    }
                );
            }
        }
    }

    /// <summary>Puts an empty list, and the object it stands in, where the document leaves them away.</summary>
    private static void Provide(string list, JsonPatchTarget target, Action<JsonPatchOperation> add)
    {
        for (var end = list.IndexOf('/', 1); ; end = list.IndexOf('/', end + 1))
        {
            var pointer = end < 0 ? list : list[..end];
            if (!target.TryGet(pointer, out _))
            {
                add(
                    new JsonPatchOperation
                    {
                        Op = "add",
                        Path = pointer,
                        Value = end < 0 ? Empty("[]"u8) : Empty("{}"u8),
                    }
                );
            }

            if (end < 0)
            {
                return;
            }
        }
    }

    private static JsonElement Empty(ReadOnlySpan<byte> text)
    {
        var json = new Utf8JsonReader(text);
        return JsonElement.ParseValue(ref json);
    }
}
