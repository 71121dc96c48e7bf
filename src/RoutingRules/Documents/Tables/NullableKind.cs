using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A value that may be missing; where <paramref name="nullable"/>, JSON null is a value of its own.</summary>
internal sealed class NullableKind<T>(Kind<T> inner, bool nullable) : Kind<T?>
    where T : struct
{
    private static readonly object Null = new();

    public override string? DefinitionName => nullable ? null : inner.DefinitionName;

    public override T? Load(in Slot slot) => ReferenceEquals(slot.A, Null) ? null : inner.Load(in slot);

    public override void Write(Utf8JsonWriter json, T? value)
    {
        if (value is { } present)
        {
            inner.Write(json, present);
        }
        else
        {
            json.WriteNullValue();
        }
    }

    public override Unwritable? Check(T? value) =>
        value is { } present ? inner.Check(present)
        : nullable ? null
        : Unwritable.Of("nothing stands here");

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        if (nullable && json.TokenType == JsonTokenType.Null)
        {
            slot = default;
            slot.A = Null;
            return true;
        }

        return inner.TryRead(ref json, session, out slot);
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        if (!nullable)
        {
            inner.WriteKeywords(json, schema);
            return;
        }

        json.WriteStartArray("anyOf");
        json.WriteStartObject();
        json.WriteString("type", "null");
        json.WriteEndObject();
        schema.WriteValue(json, inner, null);
        json.WriteEndArray();
    }
}
