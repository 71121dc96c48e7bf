using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A whole number of 32 bits.</summary>
internal sealed class IntKind(int min, int max) : WholeNumberKind<int>(min, max)
{
    public override int Load(in Slot slot) => (int)slot.N;

    public override void Write(Utf8JsonWriter json, int value) => json.WriteNumberValue(value);

    public override Unwritable? Check(int value) => CheckNumber(value);
}
