using System.Text.Json;
using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>A number or a range of numbers, as a text.</summary>
internal sealed class NumberRangeKind() : AddressKind<NumberRange>(0, NumberRange.Shape)
{
    public override string? DefinitionName => "numberRange";

    protected override string Title => "a number or a range in quotation marks";

    protected override string Pattern => Patterns.NumberRange;

    public override NumberRange Load(in Slot slot) => new(First(in slot), Last(in slot));

    protected override string? Text(NumberRange value) => value.Width == 0 ? null : value.ToString();

    public override void Write(Utf8JsonWriter json, NumberRange value) => json.WriteStringValue(value.ToString());
}
