using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Documents.Text;

namespace RoutingRules.Fixing;

/// <summary>A document while a patch is being applied to it.</summary>
internal sealed class JsonPatchTarget(JsonNode? root)
{
    /// <summary>Deeper than any document that the reader takes, extensions included.</summary>
    public const int Depth = 512;

    private static readonly JsonSerializerOptions Deep = new() { MaxDepth = Depth };

    public JsonNode? Root { get; private set; } = root;

    /// <summary>A document, with or without a byte order mark.</summary>
    /// <exception cref="JsonException">It is not sound JSON.</exception>
    public static JsonNode? Parse(ReadOnlySpan<byte> utf8Json)
    {
        var text = Utf8Mark.Skip(utf8Json);
        CheckTexts(text);
        return JsonNode.Parse(text, documentOptions: new JsonDocumentOptions { MaxDepth = Depth, AllowDuplicateProperties = false });
    }

    /// <summary>A value as it stands at one moment.</summary>
    public static JsonElement ToElement(JsonNode? node)
    {
        using var document = JsonDocument.Parse(node?.ToJsonString(Deep) ?? "null", new JsonDocumentOptions { MaxDepth = Depth });
        return document.RootElement.Clone();
    }

    /// <summary>JSON can write half of a surrogate pair as an escape; it is no text and no patch can carry it (RFC 8259, section 8.2).</summary>
    private static void CheckTexts(ReadOnlySpan<byte> text)
    {
        var json = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = Depth });
        while (json.Read())
        {
            if (json.TokenType is not (JsonTokenType.PropertyName or JsonTokenType.String) || !json.ValueIsEscaped)
            {
                continue;
            }

            try
            {
                json.GetString();
            }
            catch (InvalidOperationException fault)
            {
                throw new JsonException(
                    $"The text at byte {json.TokenStartIndex.ToString(CultureInfo.InvariantCulture)} holds half of a surrogate pair, which is no Unicode text.",
                    fault
                );
            }
        }
    }

    /// <summary>The reference tokens of a JSON Pointer; false when it is none (RFC 6901, section 3).</summary>
    public static bool TryParts(string pointer, out string[] parts)
    {
        parts = [];
        if (pointer.Length == 0)
        {
            return true;
        }

        if (pointer[0] != '/')
        {
            return false;
        }

        for (var i = pointer.IndexOf('~', StringComparison.Ordinal); i >= 0; i = pointer.IndexOf('~', i + 1))
        {
            if (i + 1 == pointer.Length || pointer[i + 1] is not ('0' or '1'))
            {
                return false;
            }
        }

        parts = [.. pointer.Split('/')[1..].Select(JsonPointer.Unescape)];
        return true;
    }

    public static JsonNode? ToNode(JsonElement value) =>
        value.ValueKind switch
        {
            JsonValueKind.Null => null,
            JsonValueKind.Object => JsonObject.Create(value.Clone()),
            JsonValueKind.Array => JsonArray.Create(value.Clone()),
            _ => JsonValue.Create(value.Clone()),
        };

    public void Apply(JsonPatchOperation operation)
    {
        switch (operation.Op)
        {
            case "add":
                Add(operation.Path, ToNode(operation.Value!.Value));
                break;
            case "remove":
                Remove(operation.Path);
                break;
            case "replace":
                Replace(operation.Path, ToNode(operation.Value!.Value));
                break;
            case "move":
                if (operation.Path.StartsWith(operation.From + "/", StringComparison.Ordinal))
                {
                    throw new JsonPatchException($"'{operation.From}' cannot be moved into itself.");
                }

                Add(operation.Path, Remove(operation.From!));
                break;
            case "copy":
                Add(operation.Path, Get(operation.From!)?.DeepClone());
                break;
            case "test":
                if (!JsonNode.DeepEquals(Get(operation.Path), ToNode(operation.Value!.Value)))
                {
                    throw new JsonPatchException($"The value at '{operation.Path}' is not the one expected.");
                }

                break;
            default:
                throw new JsonPatchException($"There is no operation '{operation.Op}'.");
        }
    }

    /// <summary>The value at a pointer.</summary>
    public JsonNode? Get(string pointer) => TryGet(pointer, out var value) ? value : throw new JsonPatchException($"There is nothing at '{pointer}'.");

    public bool TryGet(string pointer, out JsonNode? value)
    {
        value = Root;
        foreach (var part in Parts(pointer))
        {
            var isThere = value switch
            {
                JsonObject members => members.TryGetPropertyValue(part, out value),
                JsonArray list => TryIndex(part, list.Count - 1, out var index) && Is(list[index], out value),
                _ => false,
            };
            if (!isThere)
            {
                value = null;
                return false;
            }
        }

        return true;
    }

    private static bool Is(JsonNode? node, out JsonNode? value)
    {
        value = node;
        return true;
    }

    private void Add(string pointer, JsonNode? value)
    {
        switch (Parent(pointer, out var last))
        {
            case null:
                Root = value;
                break;
            case JsonObject members:
                members[last] = value;
                break;
            case JsonArray list:
                if (last != "-" && !TryIndex(last, list.Count, out _))
                {
                    throw new JsonPatchException($"The list has no place '{pointer}'.");
                }

                list.Insert(last == "-" ? list.Count : int.Parse(last, CultureInfo.InvariantCulture), value);
                break;
            default:
                throw new JsonPatchException($"Nothing can stand at '{pointer}'.");
        }
    }

    private JsonNode? Remove(string pointer)
    {
        var value = Get(pointer);
        switch (Parent(pointer, out var last))
        {
            case JsonObject members:
                members.Remove(last);
                break;
            case JsonArray list:
                list.RemoveAt(int.Parse(last, CultureInfo.InvariantCulture));
                break;
            default:
                Root = null;
                break;
        }

        return value;
    }

    private void Replace(string pointer, JsonNode? value)
    {
        Get(pointer);
        switch (Parent(pointer, out var last))
        {
            case JsonObject members:
                members[last] = value;
                break;
            case JsonArray list:
                list[int.Parse(last, CultureInfo.InvariantCulture)] = value;
                break;
            default:
                Root = value;
                break;
        }
    }

    /// <summary>What a value stands in; null for the whole document.</summary>
    private JsonNode? Parent(string pointer, out string last)
    {
        if (pointer.Length == 0)
        {
            last = "";
            return null;
        }

        var parts = Parts(pointer);
        last = parts[^1];
        return Get(pointer[..pointer.LastIndexOf('/')]) ?? throw new JsonPatchException($"Nothing can stand at '{pointer}'.");
    }

    private static string[] Parts(string pointer) =>
        TryParts(pointer, out var parts) ? parts : throw new JsonPatchException($"'{pointer}' is no JSON Pointer.");

    private static bool TryIndex(string part, int highest, out int index) =>
        int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out index) && (part.Length == 1 || part[0] != '0') && index <= highest;
}
