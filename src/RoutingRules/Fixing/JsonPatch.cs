using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A JSON Patch (RFC 6902): operations on a JSON document, applied in order, all or none.</summary>
/// <remarks>Immutable and thread safe.</remarks>
public sealed class JsonPatch
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>A patch.</summary>
    public JsonPatch(ValueList<JsonPatchOperation> operations) => Operations = operations;

    /// <summary>The operations, in the order they are applied.</summary>
    public ValueList<JsonPatchOperation> Operations { get; }

    /// <summary>Reads a patch. Members that the operation does not need are ignored, as RFC 6902 asks; a member written twice is an error.</summary>
    /// <param name="utf8Json">The patch document.</param>
    /// <exception cref="FormatException">It is no patch document; the message says why.</exception>
    public static JsonPatch Parse(ReadOnlyMemory<byte> utf8Json)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8Json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            if (document.RootElement.ValueKind != JsonValueKind.Array)
            {
                throw new FormatException("A patch is a list of operations.");
            }

            return new JsonPatch(document.RootElement.EnumerateArray().Select(Read).ToValueList());
        }
        catch (JsonException fault)
        {
            throw new FormatException($"The patch is not sound JSON: {fault.Message}", fault);
        }
    }

    /// <summary>The operations that turn one document into another; none when they are equal, whatever their layout and the order of their members.</summary>
    /// <remarks>List elements are recognised by their <c>id</c> where they have one, so that an element that only moved is moved.</remarks>
    /// <param name="before">The document to start from. Null is the JSON value null.</param>
    /// <param name="after">The document to arrive at.</param>
    public static JsonPatch Between(JsonNode? before, JsonNode? after) => new(JsonDifference.Between(before, after).ToValueList());

    /// <summary>The operations that turn one document into another.</summary>
    /// <param name="utf8Before">The document to start from, with or without a byte order mark.</param>
    /// <param name="utf8After">The document to arrive at, with or without a byte order mark.</param>
    /// <exception cref="JsonException">A document is not sound JSON.</exception>
    public static JsonPatch Between(ReadOnlySpan<byte> utf8Before, ReadOnlySpan<byte> utf8After) =>
        Between(JsonPatchTarget.Parse(utf8Before), JsonPatchTarget.Parse(utf8After));

    /// <summary>Applies the patch.</summary>
    /// <param name="document">The document; stays as it is. Null is the JSON value null.</param>
    /// <returns>The patched document.</returns>
    /// <exception cref="JsonPatchException">An operation does not fit the document, or a test failed.</exception>
    public JsonNode? Apply(JsonNode? document)
    {
        var target = new JsonPatchTarget(document?.DeepClone());
        foreach (var operation in Operations)
        {
            target.Apply(operation);
        }

        return target.Root;
    }

    /// <summary>Writes the patch as a value.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="json"/> is null.</exception>
    public void WriteTo(Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartArray();
        foreach (var operation in Operations)
        {
            operation.WriteTo(json);
        }

        json.WriteEndArray();
    }

    /// <summary>The patch as a document: indented UTF-8 without a byte order mark, LF, a line break at the end.</summary>
    public byte[] ToUtf8()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Layout))
        {
            WriteTo(json);
        }

        buffer.Write("\n"u8);
        return buffer.WrittenSpan.ToArray();
    }

    private static JsonPatchOperation Read(JsonElement operation)
    {
        if (operation.ValueKind != JsonValueKind.Object)
        {
            throw new FormatException("An operation is an object.");
        }

        var op = Text(operation, "op");
        var takesValue = op is "add" or "replace" or "test";
        if (!takesValue && op is not ("remove" or "move" or "copy"))
        {
            throw new FormatException($"There is no operation '{op}'.");
        }

        return new JsonPatchOperation
        {
            Op = op,
            Path = Pointer(operation, "path"),
            From = op is "move" or "copy" ? Pointer(operation, "from") : null,
            Value =
                !takesValue ? null
                : operation.TryGetProperty("value", out var value) ? value.Clone()
                : throw new FormatException($"The operation '{op}' has no value."),
        };
    }

    private static string Pointer(JsonElement operation, string name)
    {
        var pointer = Text(operation, name);
        return JsonPatchTarget.TryParts(pointer, out _) ? pointer : throw new FormatException($"'{pointer}' is no JSON Pointer.");
    }

    private static string Text(JsonElement operation, string name) =>
        operation.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String
            ? value.GetString()!
            : throw new FormatException($"An operation has no text '{name}'.");
}
