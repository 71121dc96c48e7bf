using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Puts devices under their supplies.</summary>
internal static class PowerBuilder
{
    /// <summary>Supplies in the order in which devices name them, devices in rig order.</summary>
    public static ValueList<SheetPowered> Build(DeviceNode[] devices, SheetView view)
    {
        var supplies = devices.SelectMany(device => device.Model.Power).Distinct().ToArray();
        var none = supplies.Length == 0 ? [] : devices.Where(device => device.Model.Power.IsEmpty).Select(device => Row(device, null, view));
        return supplies
            .SelectMany(supply => devices.Where(device => device.Model.Power.Contains(supply)).Select(device => Row(device, supply, view)))
            .Concat(none)
            .ToValueList();
    }

    private static SheetPowered Row(DeviceNode device, Id<PowerSource>? supply, SheetView view) =>
        new()
        {
            Supply = supply?.Value,
            Id = device.Id,
            Device = device.DisplayName,
            Zone = SheetWords.Zone(device.Zone, view),
            AlsoOn = device.Model.Power.Distinct().Where(other => other != supply).Select(other => other.Value).ToValueList(),
        };
}
