using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A whole number of up to 53 bits.</summary>
internal sealed class LongKind(long min, long max) : WholeNumberKind<long>(min, max)
{
    public override long Load(in Slot slot) => slot.N;

    public override void Write(Utf8JsonWriter json, long value) => json.WriteNumberValue(value);

    public override Unwritable? Check(long value) => CheckNumber(value);
}
