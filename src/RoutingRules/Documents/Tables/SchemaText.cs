using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>Writes a JSON Schema from tables: the root object, then each definition once, by name.</summary>
internal sealed class SchemaText
{
    private const string Dialect = "http://json-schema.org/draft-07/schema#";

    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly SortedDictionary<string, ValueShape> definitions = new(StringComparer.Ordinal);
    private readonly Queue<string> unwritten = new();

    /// <summary>The schema, with a line break at the end.</summary>
    /// <param name="id">Its <c>$id</c>.</param>
    /// <param name="root">The document.</param>
    public static string Write(string id, ObjectShape root)
    {
        var schema = new SchemaText();
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Layout))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Dialect);
            json.WriteString("$id", id);
            schema.WriteDescribedObject(json, root);
            schema.WriteDefinitions(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    /// <summary>Writes the schema of a value: a reference to its definition, or its keywords in place.</summary>
    public void WriteValue(Utf8JsonWriter json, ValueShape value, string? description)
    {
        json.WriteStartObject();
        if (description is not null)
        {
            json.WriteString("description", description);
        }

        if (value.DefinitionName is { } name)
        {
            if (definitions.TryAdd(name, value))
            {
                unwritten.Enqueue(name);
            }

            json.WriteString("$ref", $"#/definitions/{name}");
        }
        else
        {
            value.WriteKeywords(json, this);
        }

        json.WriteEndObject();
    }

    public void WriteDescribedObject(Utf8JsonWriter json, ObjectShape shape)
    {
        json.WriteString("description", shape.Doc);
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        foreach (var member in shape.Members)
        {
            json.WritePropertyName(member.Name);
            WriteValue(json, member.Value, member.Doc);
        }

        json.WriteEndObject();
        WriteRequired(json, shape, shape.RequiredMask);
        if (!shape.Open)
        {
            json.WriteBoolean("additionalProperties", false);
        }

        if (shape.Choice.Length > 0)
        {
            json.WriteStartArray("oneOf");
            foreach (var alternative in shape.Choice)
            {
                WriteAlternative(json, shape, alternative);
            }

            json.WriteEndArray();
        }
    }

    public void WriteList(Utf8JsonWriter json, ValueShape element, int min, int max, bool unique)
    {
        json.WriteString("type", "array");
        json.WritePropertyName("items");
        WriteValue(json, element, null);
        if (min > 0)
        {
            json.WriteNumber("minItems", min);
        }

        if (max < int.MaxValue)
        {
            json.WriteNumber("maxItems", max);
        }

        if (unique)
        {
            json.WriteBoolean("uniqueItems", true);
        }
    }

    private static void WriteAlternative(Utf8JsonWriter json, ObjectShape shape, ulong members)
    {
        json.WriteStartObject();
        if (ulong.PopCount(members) == 1)
        {
            WriteRequired(json, shape, members);
            json.WriteEndObject();
            return;
        }

        json.WriteStartArray("anyOf");
        for (var i = 0; i < shape.Members.Length; i++)
        {
            if ((members >> i & 1) != 0)
            {
                json.WriteStartObject();
                WriteRequired(json, shape, 1UL << i);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteRequired(Utf8JsonWriter json, ObjectShape shape, ulong members)
    {
        if (members == 0)
        {
            return;
        }

        json.WriteStartArray("required");
        for (var i = 0; i < shape.Members.Length; i++)
        {
            if ((members >> i & 1) != 0)
            {
                json.WriteStringValue(shape.Members[i].Name);
            }
        }

        json.WriteEndArray();
    }

    private void WriteDefinitions(Utf8JsonWriter json)
    {
        // Writing a definition finds further ones; only when all are known can they be put in order.
        while (unwritten.TryDequeue(out var name))
        {
            using var unused = new Utf8JsonWriter(System.IO.Stream.Null);
            unused.WriteStartObject();
            definitions[name].WriteKeywords(unused, this);
            unused.WriteEndObject();
        }

        json.WriteStartObject("definitions");
        foreach (var (name, value) in definitions)
        {
            json.WriteStartObject(name);
            value.WriteKeywords(json, this);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
