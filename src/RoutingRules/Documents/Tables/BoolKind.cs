using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>True or false.</summary>
internal sealed class BoolKind : Kind<bool>
{
    public override bool Load(in Slot slot) => slot.N != 0;

    public override void Write(Utf8JsonWriter json, bool value) => json.WriteBooleanValue(value);

    public override Unwritable? Check(bool value) => null;

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => json.WriteString("type", "boolean");

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType is JsonTokenType.True or JsonTokenType.False)
        {
            slot.N = json.TokenType == JsonTokenType.True ? 1 : 0;
            return true;
        }

        var quoted = json.TokenType == JsonTokenType.String && (json.ValueSpan.SequenceEqual("true"u8) || json.ValueSpan.SequenceEqual("false"u8));
        return session.WrongType(ref json, "true or false", quoted ? "Write true or false without quotation marks." : null);
    }
}
