using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Documents.Tables;

/// <summary>Points of a device of the rig.</summary>
internal sealed class PointRangeKind() : AddressKind<PointRange>(2, PointRange.Shape)
{
    public override string? DefinitionName => "pointRange";

    protected override string Title => "an address";

    protected override string Pattern => Patterns.PointRange;

    public override PointRange Load(in Slot slot) => new(new Id<Device>((string)slot.A!), new Id<PortGroup>((string)slot.B!), First(in slot), Last(in slot));

    protected override string? Text(PointRange value) => value.Width == 0 ? null : value.ToString();

    public override void Write(Utf8JsonWriter json, PointRange value) => json.WriteStringValue(value.ToString());
}
