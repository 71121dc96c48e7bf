using System.Globalization;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A day of the calendar, year-month-day (ISO 8601, RFC 3339 full-date).</summary>
internal sealed class DateKind : StringKind<DateOnly>
{
    private const string Format = "yyyy-MM-dd";

    public override string? DefinitionName => "date";

    protected override string Title => "a date as text";

    protected override string Pattern => Patterns.Date;

    public override DateOnly Load(in Slot slot) => DateOnly.FromDayNumber((int)slot.N);

    public override void Write(Utf8JsonWriter json, DateOnly value) => json.WriteStringValue(value.ToString(Format, CultureInfo.InvariantCulture));

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        if (text.Length != Format.Length || text[4] != '-' || text[7] != '-' || !IsDigits(text[..4]) || !IsDigits(text[5..7]) || !IsDigits(text[8..]))
        {
            return session.Report(ReadingRules.ValueMalformed, offset, $"{Quote.Text(text)} is no date; write year-month-day, such as 2027-06-12");
        }

        var year = Number(text[..4]);
        var month = Number(text[5..7]);
        var day = Number(text[8..]);
        if (year == 0 || month is 0 or > 12 || day == 0 || day > DateTime.DaysInMonth(year, month))
        {
            return session.Report(ReadingRules.ValueMalformed, offset, $"{Quote.Text(text)} is no day of the calendar");
        }

        slot.N = new DateOnly(year, month, day).DayNumber;
        return true;
    }

    private static bool IsDigits(ReadOnlySpan<byte> text) => text.IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0;

    private static int Number(ReadOnlySpan<byte> digits)
    {
        var number = 0;
        foreach (var digit in digits)
        {
            number = (number * 10) + (digit - '0');
        }

        return number;
    }
}
