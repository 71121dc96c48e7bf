using System.Globalization;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A number with decimals from 0 on.</summary>
/// <param name="max">The largest value.</param>
/// <param name="positive">Whether 0 itself is refused.</param>
internal sealed class DecimalNumberKind(double max, bool positive) : Kind<double>
{
    public override double Load(in Slot slot) => BitConverter.Int64BitsToDouble(slot.N);

    public override void Write(Utf8JsonWriter json, double value) => json.WriteNumberValue(value);

    public override Unwritable? Check(double value) =>
        (positive ? value > 0 : value >= 0) && value <= max
            ? null
            : Unwritable.Of(string.Create(CultureInfo.InvariantCulture, $"{value} is not {(positive ? "above 0 and at most" : "between 0 and")} {max}"));

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema)
    {
        json.WriteString("type", "number");
        json.WriteNumber(positive ? "exclusiveMinimum" : "minimum", 0);
        json.WriteNumber("maximum", max);
    }

    public override bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot)
    {
        slot = default;
        if (json.TokenType != JsonTokenType.Number)
        {
            return session.WrongType(ref json, "a number", WholeNumberKind<double>.Unquoted(ref json));
        }

        if (!json.TryGetDouble(out var value) || !(positive ? value > 0 : value >= 0) || value > max)
        {
            return session.Report(
                ReadingRules.ValueOutOfRange,
                json.TokenStartIndex,
                $"{Quote.Plain(json.ValueSpan)} is not {(positive ? "above 0 and at most" : "between 0 and")} {max.ToString(CultureInfo.InvariantCulture)}"
            );
        }

        slot.N = BitConverter.DoubleToInt64Bits(value);
        return true;
    }
}
