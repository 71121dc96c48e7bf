using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <content>Channels, buses and what is free.</content>
internal static partial class DevicePages
{
    private static PageTable Channels(SheetTable<SheetChannel> table)
    {
        var page = new PageTable
        {
            Title = Title("Channels and tracks", table.Group, table.Connector),
            HasBigFirst = true,
            RowColumns = 2,
            Columns = [("Ch", 11), ("Label", 20, "label "), ("Line", 28), ("Enters at", 29, "from "), ("Phantom", 12, PhantomLead)],
        };
        Fill(
            page,
            table.Rows,
            row =>
                [
                    Number(row.At),
                    PageLayout.Cell(row.Label),
                    [
                        .. Named(row.Signal, null, row.Marks, row.Reason),
                        .. row.Missing.Select(name => new PageLine($"{name} does not arrive", PageLineStyle.Mark)),
                    ],
                    PageLayout.Cell([.. row.Enters.Select((place, i) => i == 0 ? place.ToString() : $"then {place}")]),
                    [.. row.Phantom.SelectMany(Phantom)],
                ]
        );
        return page;
    }

    private static PageTable Buses(SheetTable<SheetBus> table)
    {
        var page = new PageTable
        {
            Title = Title("Buses and sources", table.Group, table.Connector),
            HasBigFirst = true,
            RowColumns = 2,
            Columns = [("Bus", 11), ("Label", 18, "label "), ("Feed or line", 28), ("Arrives at", 43, "to ")],
        };
        Fill(
            page,
            table.Rows,
            row =>
                [
                    Number(row.At),
                    PageLayout.Cell(row.Label),
                    [.. row.Names.SelectMany(name => PageLayout.Strong(name)), .. Marks(row.Marks, row.Reason)],
                    row.Arrives.IsEmpty ? [new PageLine("nowhere yet", PageLineStyle.Mark)] : PageLayout.Cell([.. row.Arrives.Select(Path)]),
                ]
        );
        return page;
    }

    public static string Path(SheetPath path)
    {
        var text = path.Places[0].ToString();
        for (var i = 1; i < path.Places.Count; i++)
        {
            var place = path.Places[i];
            text += place.Device == path.Places[i - 1].Device ? $" \u2192 {place.Here}" : $" \u2192 {place}";
        }

        return path.Way is null ? text : $"{text} ({path.Way})";
    }

    public static List<PageLine> Notes(params string?[] lines) => PageLayout.Cell(lines).ConvertAll(line => line with { Style = PageLineStyle.Note });

    private static string Free<TRow>(SheetTable<TRow> table)
        where TRow : ISheetRow => IsUsed(table) ? "" : $"{table.Group} {SheetWords.Runs(Enumerable.Range(1, table.Rows.Count))}";

    /// <summary>Groups of which nothing is said, in one line at the end of the last table.</summary>
    private static void AddFree(Page page, DeviceSheet device, bool hasSlots)
    {
        var free = new List<string>([
            .. device.Outputs.Select(Free),
            .. device.Inputs.Select(Free),
            .. device.Channels.Select(Free),
            .. device.Buses.Select(Free),
        ]);
        free.RemoveAll(run => run.Length == 0);
        free.AddRange(hasSlots ? NetworkTables.Free(device) : []);
        if (free.Count == 0)
        {
            return;
        }

        if (page.Tables.Count == 0)
        {
            page.Tables.Add(new PageTable { Title = "Connectors and slots", Columns = [("Numbers", 100)] });
        }

        page.Tables[^1].Rows.Add(new PageRow { Across = $"Free on this device: {string.Join("; ", free)}" });
    }
}
