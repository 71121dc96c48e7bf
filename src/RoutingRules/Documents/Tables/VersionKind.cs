using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>The format version of a document; any other than that of the tables ends the reading, so that an upgrader can have its turn.</summary>
internal sealed class VersionKind(int current) : Kind<int>
{
    public override int Load(in Slot slot) => (int)slot.N;

    public override void Write(Utf8JsonWriter json, int value) => json.WriteNumberValue(value);

    public override Unwritable? Check(int value) => value == current ? null : Unwritable.Of($"{value} is not {current}, the version of the format");

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        json.WriteString("type", "integer");
        json.WriteStartArray("enum");
        json.WriteNumberValue(current);
        json.WriteEndArray();
    }

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.Number || !json.TryGetInt64(out slot.N))
        {
            return session.WrongType(ref json, "a whole number", WholeNumberKind<int>.Unquoted(ref json));
        }

        if (slot.N == session.FormatVersion)
        {
            return true;
        }

        session.OtherVersion = slot.N;
        session.OtherVersionOffset = json.TokenStartIndex;
        throw new ReadStoppedException();
    }
}
