using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The table of how full each device is.</summary>
internal static class UtilisationText
{
    public static readonly string[] Heads = ["", "outputs", "inputs", "blocks sent", "blocks received", "streams received"];

    public static IEnumerable<string[]> Rows(Show show, IEnumerable<DeviceUse> table)
    {
        foreach (var use in table)
        {
            yield return
            [
                Name(show, use),
                Of(use.OutputsUsed, use.OutputsUsable),
                Of(use.InputsUsed, use.InputsUsable),
                Of(use.TransmitBlocksUsed, use.TransmitBlockLimit),
                Of(use.ReceiveBlocksUsed, use.ReceiveBlockLimit),
                use.StreamsReceivedLimit is { } limit ? Of(use.StreamsReceived, limit)
                : use.StreamsReceived == 0 ? ""
                : use.StreamsReceived.ToString(CultureInfo.InvariantCulture),
            ];
        }
    }

    /// <summary>Writes the rows of devices that something is used of, and names the others.</summary>
    public static void Write(Show show, IEnumerable<DeviceUse> table, TextWriter output)
    {
        var used = table.Where(IsUsed).ToList();
        var idle = table.Where(use => !IsUsed(use) && !IsCabled(show, use)).Select(use => Name(show, use)).ToList();
        if (used.Count == 0)
        {
            return;
        }

        var columns = new TextColumns();
        columns.Add(Heads);
        foreach (var row in Rows(show, used))
        {
            columns.Add(row);
        }

        output.Write("\nHow full the devices are: used of what can be used\n");
        columns.WriteTo(output, "  ");
        if (idle.Count > 0)
        {
            output.Write($"  Not used: {string.Join(", ", idle)}.\n");
        }
    }

    private static bool IsUsed(DeviceUse use) => use.OutputsUsed + use.InputsUsed + use.TransmitBlocksUsed + use.ReceiveBlocksUsed > 0;

    /// <summary>Amplifiers and racks at the end of cables are used, though nothing is patched at them.</summary>
    private static bool IsCabled(Show show, DeviceUse use) => show.Rig.Cables.Any(cable => cable.To.Device == use.Device);

    private static string Name(Show show, DeviceUse use)
    {
        var label = show.Rig.Devices.FirstOrDefault(device => device.Id == use.Device)?.Label;
        return label is null ? use.Device.Value : $"{PlainText.Show(label)} ({use.Device})";
    }

    private static string Of(int used, int limit) => used == 0 && limit == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{used} of {limit}");
}
