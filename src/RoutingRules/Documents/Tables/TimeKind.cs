using System.Globalization;
using System.Text.Json;
using RoutingRules.Documents.Text;

namespace RoutingRules.Documents.Tables;

/// <summary>A time of day, hours:minutes on a clock of 24 hours (ISO 8601).</summary>
internal sealed class TimeKind : StringKind<TimeOnly>
{
    private const string Format = "HH:mm";

    public override string? DefinitionName => "time";

    protected override string Title => "a time of day as text";

    protected override string Pattern => Patterns.Time;

    public override TimeOnly Load(in Slot slot) => new(slot.N);

    public override void Write(Utf8JsonWriter json, TimeOnly value) => json.WriteStringValue(value.ToString(Format, CultureInfo.InvariantCulture));

    protected override bool TryParse(ReadOnlySpan<byte> text, ReadSession session, long offset, out Slot slot)
    {
        slot = default;
        var written = System.Text.Encoding.UTF8.GetString(text);
        if (!TimeOnly.TryParseExact(written, Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return session.Report(ReadingRules.ValueMalformed, offset, $"{Quote.Text(text)} is no time of day; write hours:minutes, such as 18:30");
        }

        slot.N = time.Ticks;
        return true;
    }
}
