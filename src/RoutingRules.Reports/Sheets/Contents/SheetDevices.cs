using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Which devices a sheet is of.</summary>
internal static class SheetDevices
{
    /// <summary>The devices that were asked for, in rig order; null when all are meant.</summary>
    /// <exception cref="ArgumentException">Something is not in the rig, or holds no device.</exception>
    public static DeviceNode[]? Select(ResolvedShow show, SheetOptions options)
    {
        if (options.Devices.IsEmpty && options.Zones.IsEmpty && options.Sides.IsEmpty)
        {
            return null;
        }

        var chosen = new HashSet<int>();
        foreach (var id in options.Devices)
        {
            var device =
                show.Graph.Device(id)
                ?? throw new ArgumentException(
                    $"The rig has no device '{id}'; it has {List(show.Devices.Select(device => device.Id.Value))}.",
                    nameof(options)
                );
            chosen.Add(device.Index);
        }

        foreach (var id in options.Zones)
        {
            if (!show.Document.Rig.Zones.Any(zone => zone.Id == id))
            {
                throw new ArgumentException(
                    $"The rig has no zone '{id}'; it has {List(show.Document.Rig.Zones.Select(zone => zone.Id.Value))}.",
                    nameof(options)
                );
            }

            Add(chosen, show, device => device.Zone?.Id == id, $"zone '{id}'", options);
        }

        foreach (var side in options.Sides)
        {
            Add(chosen, show, device => device.Zone?.Side == side, SheetWords.Side(side, SheetView.House) ?? "no side", options);
        }

        return [.. show.Devices.Where(device => chosen.Contains(device.Index))];
    }

    private static void Add(HashSet<int> chosen, ResolvedShow show, Func<DeviceNode, bool> belongs, string where, SheetOptions options)
    {
        var found = show.Devices.Where(belongs).ToArray();
        if (found.Length == 0)
        {
            throw new ArgumentException(
                $"No device stands in {where}; there are {List(show.Devices.Where(device => device.Zone is not null).Select(Stand))}.",
                nameof(options)
            );
        }

        chosen.UnionWith(found.Select(device => device.Index));
    }

    private static string Stand(DeviceNode device) =>
        $"{device.Id} in zone '{device.Zone!.Id}'{(SheetWords.Side(device.Zone.Side, SheetView.House) is { } side ? $", {side}" : "")}";

    private static string List(IEnumerable<string> names) => names.ToArray() is { Length: > 0 } some ? string.Join(", ", some) : "none";
}
