using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>An object of any content, kept as text.</summary>
internal sealed class ExtensionKind : Kind<ExtensionData>
{
    public override string? DefinitionName => "extensions";

    public override ExtensionData Load(in Slot slot) => new() { Json = (string)slot.A! };

    public override void Write(Utf8JsonWriter json, ExtensionData value)
    {
        try
        {
            if (value.Json.AsSpan().TrimStart(" \t\r\n") is ['{', ..])
            {
                json.WriteRawValue(value.Json);
                return;
            }
        }
        catch (JsonException fault)
        {
            throw new ArgumentException("An extensions member holds no JSON object.", nameof(value), fault);
        }

        throw new ArgumentException("An extensions member holds no JSON object.", nameof(value));
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => json.WriteString("type", "object");

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.StartObject)
        {
            return session.WrongType(ref json, "an object");
        }

        var brace = json.ValueSpan;
        var start = json.TokenStartIndex;
        var depth = json.CurrentDepth;
        do
        {
            json.Read();
            if (json.CurrentDepth - depth >= session.Limits.ExtensionDepth && json.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
            {
                session.Report(
                    ReadingRules.DocumentUnreadable,
                    json.TokenStartIndex,
                    $"objects and lists are nested more than {session.Limits.ExtensionDepth} deep"
                );
                throw new ReadStoppedException();
            }
        } while (json.CurrentDepth > depth);

        // The brace is a slice of the document, which goes on behind it up to the closing brace just read.
        var text = MemoryMarshal.CreateReadOnlySpan(ref MemoryMarshal.GetReference(brace), (int)(json.BytesConsumed - start));
        slot.A = Encoding.UTF8.GetString(text);
        return true;
    }
}
