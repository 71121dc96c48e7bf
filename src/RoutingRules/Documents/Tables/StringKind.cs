using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A value written as a JSON string.</summary>
internal abstract class StringKind<T> : Kind<T>
{
    /// <summary>What it is, for messages: <c>an address</c>.</summary>
    protected abstract string Title { get; }

    /// <summary>The pattern that schemas give, in the part of regular expressions that all validators share.</summary>
    protected abstract string Pattern { get; }

    /// <summary>Reads the text; reports at <paramref name="offset"/> when it is bad.</summary>
    protected abstract bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot);

    public sealed override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        if (json.TokenType != JsonTokenType.String)
        {
            slot = default;
            return session.WrongType(ref json, Title, json.TokenType == JsonTokenType.Number ? "Write the value in quotation marks." : null);
        }

        if (!json.ValueIsEscaped)
        {
            return TryParse(json.ValueSpan, session, json.TokenStartIndex, out slot);
        }

        if (session.TryUnescape(ref json, out var text))
        {
            return TryParse(text, session, json.TokenStartIndex, out slot);
        }

        slot = default;
        return session.Report(
            ReadingRules.ValueMalformed,
            json.TokenStartIndex,
            "the text holds half of a surrogate pair as a \\u escape; write the character itself"
        );
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        json.WriteString("type", "string");
        json.WriteString("pattern", Pattern);
    }
}
