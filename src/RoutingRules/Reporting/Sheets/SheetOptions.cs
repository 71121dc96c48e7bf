using RoutingRules.Model;

namespace RoutingRules.Reporting.Sheets;

/// <summary>What sheets to make.</summary>
public sealed record SheetOptions
{
    /// <summary>The devices to show, printed in rig order; empty for all. The check lists then hold what enters, passes or ends at these devices.</summary>
    public ValueList<Id<Device>> Devices { get; init; }

    /// <summary>Whose left and right to use.</summary>
    public SheetView View { get; init; }
}
