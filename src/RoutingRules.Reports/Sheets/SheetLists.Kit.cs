using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <content>Kit and power.</content>
public static partial class SheetLists
{
    private static readonly string[] KitColumns = ["Kind", "What", "From", "Needed", "Spare", "Take", "For", "Change"];

    private static readonly string[] PowerColumns = ["Supply", "Device", "Device id", "Zone", "Also on", "Change"];

    private static IEnumerable<string?> Kit(SheetKitItem item) =>
        [
            KitPages.Title(item.Kind),
            item.Name,
            item.SuppliedBy,
            SheetWords.Number(item.Count),
            SheetWords.Number(item.Spare),
            SheetWords.Number(item.Count + item.Spare),
            string.Join(Between, item.For),
            Change(item.Change),
        ];

    private static IEnumerable<string?> Powered(SheetPowered row) =>
        [row.Supply, row.Device, row.Id.Value, row.Zone, string.Join(Between, row.AlsoOn), Change(row.Change)];
}
