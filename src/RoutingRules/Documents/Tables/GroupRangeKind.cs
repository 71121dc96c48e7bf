using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Documents.Tables;

/// <summary>Points of a group of a profile, or one of them.</summary>
internal sealed class GroupRangeKind(bool single = false) : AddressKind<GroupRange>(1, single ? "group/number, such as net/1" : GroupRange.Shape)
{
    public override string? DefinitionName => single ? "groupPoint" : "groupRange";

    protected override bool IsSingle => single;

    protected override string Title => "an address in a group";

    protected override string Pattern => single ? Patterns.Jack : Patterns.GroupRange;

    public override GroupRange Load(in Slot slot) => new(new Id<PortGroup>((string)slot.A!), First(in slot), Last(in slot));

    protected override string? Text(GroupRange value) => value.Width == 0 ? null : value.ToString();

    public override void Write(Utf8JsonWriter json, GroupRange value) => json.WriteStringValue(value.ToString());
}
