using System.Globalization;
using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A whole number within bounds, both included; bounds fit into 53 bits so that every JSON tool keeps the value.</summary>
internal abstract class WholeNumberKind<T>(long min, long max) : Kind<T>
{
    public sealed override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.Number)
        {
            return session.WrongType(ref json, "a whole number", Unquoted(ref json));
        }

        if (json.TryGetInt64(out slot.N))
        {
            return (slot.N >= min && slot.N <= max) || OutOfRange(ref json, session);
        }

        slot.N = 0;
        return json.ValueSpan.IndexOfAny(".eE"u8) < 0
            ? OutOfRange(ref json, session)
            : session.WrongType(ref json, "a whole number", "Write a whole number in digits only.");
    }

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        json.WriteString("type", "integer");
        json.WriteNumber("minimum", min);
        json.WriteNumber("maximum", max);
    }

    protected Unwritable? CheckNumber(long value) =>
        value >= min && value <= max ? null : Unwritable.Of($"{Show(value)} is not between {Show(min)} and {Show(max)}");

    /// <summary>What to write instead of a number in quotation marks; null when the value is something else.</summary>
    internal static string? Unquoted(ref Utf8JsonReader json) =>
        json.TokenType == JsonTokenType.String
        && double.TryParse(json.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? $"Write {Encoding.UTF8.GetString(json.ValueSpan).Trim()} without quotation marks."
            : null;

    private bool OutOfRange(ref Utf8JsonReader json, ReadSession session) =>
        session.Report(ReadingRules.ValueOutOfRange, json.TokenStartIndex, $"{Quote.Plain(json.ValueSpan)} is not between {Show(min)} and {Show(max)}");

    private static string Show(long number) => number.ToString(CultureInfo.InvariantCulture);
}
