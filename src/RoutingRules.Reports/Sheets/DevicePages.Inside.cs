using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <content>Channels, buses and the network.</content>
internal static partial class DevicePages
{
    private static PageTable Channels(SheetTable<SheetChannel> table)
    {
        var page = new PageTable
        {
            Title = Title("Channels and tracks", table.Group, table.Connector),
            HasBigFirst = true,
            Columns = [("Ch", 11), ("Label", 20), ("Line", 28), ("Enters at", 29), ("Phantom", 12)],
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
            Columns = [("Bus", 11), ("Label", 18), ("Feed or line", 28), ("Arrives at", 43)],
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
            text += place.Device == path.Places[i - 1].Device ? $" \u2192 {place.Group} {place.Mark}" : $" \u2192 {place}";
        }

        return path.Way is null ? text : $"{text} ({path.Way})";
    }

    private static void AddNetwork(Page page, DeviceSheet device)
    {
        if (!device.Sent.IsEmpty)
        {
            var sent = new PageTable { Title = "Network: sends", Columns = [("Slots", 18), ("Stream", 16), ("Carries", 38), ("Goes to", 28)] };
            sent.Rows.AddRange(
                device.Sent.Select(stream => new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong($"{stream.Slots.Group} {stream.Slots.Numbers}"),
                        PageLayout.Cell(StreamName(stream.Id, stream.IsLink), stream.Label),
                        PageLayout.Cell(Contents(stream.Contents)),
                        PageLayout.Cell([
                            .. stream.Receivers.Select(receiver =>
                                $"{receiver.DeviceLabel} {receiver.Slots.Group} {receiver.Slots.Numbers} (ch {receiver.Channels})"
                            ),
                        ]),
                    ],
                })
            );
            page.Tables.Add(sent);
        }

        if (!device.Received.IsEmpty)
        {
            var received = new PageTable { Title = "Network: takes", Columns = [("Slots", 18), ("Stream", 16), ("Brings", 38), ("Comes from", 28)] };
            received.Rows.AddRange(
                device.Received.Select(stream => new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong($"{stream.Slots.Group} {stream.Slots.Numbers}"),
                        PageLayout.Cell(StreamName(stream.Id, stream.IsLink), $"ch {stream.Channels}"),
                        PageLayout.Cell(Contents(stream.Contents)),
                        PageLayout.Cell($"{stream.SenderLabel} {stream.SenderSlots.Group} {stream.SenderSlots.Numbers}"),
                    ],
                })
            );
            page.Tables.Add(received);
        }

        var free = new List<string>([
            .. device.Outputs.Select(Free),
            .. device.Inputs.Select(Free),
            .. device.Channels.Select(Free),
            .. device.Buses.Select(Free),
        ]);
        free.RemoveAll(run => run.Length == 0);
        free.AddRange(device.FreeSlots.GroupBy(run => run.Group).Select(runs => $"{runs.Key} {string.Join(", ", runs.Select(run => run.Numbers))}"));
        if (free.Count > 0)
        {
            var table = new PageTable { Title = "Free", Columns = [("Numbers", 100)] };
            table.Rows.Add(new PageRow { Across = string.Join("; ", free) });
            page.Tables.Add(table);
        }

        if (!device.Jacks.IsEmpty)
        {
            var jacks = new PageTable
            {
                Title = "Network jacks",
                HasBigFirst = true,
                Columns = [("Jack", 16), ("To", 32), ("Cable", 46), ("Done", 6)],
            };
            jacks.Rows.AddRange(
                device.Jacks.Select(jack => new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong($"{jack.At.Group} {jack.At.Mark}"),
                        PageLayout.Cell(jack.FarEnd?.ToString() ?? "free"),
                        [.. PageLayout.Cell(jack.Link is null ? null : $"{jack.Link}, {jack.Network}", jack.Cable), .. PageLayout.Change(jack.Change)],
                        jack.Link is null ? [] : PageLayout.Tick(""),
                    ],
                })
            );
            page.Tables.Add(jacks);
        }
    }

    private static string Free<TRow>(SheetTable<TRow> table)
        where TRow : ISheetRow => IsUsed(table) ? "" : $"{table.Group} {SheetWords.Runs(Enumerable.Range(1, table.Rows.Count))}";

    private static string StreamName(string id, bool isLink) => isLink ? $"link {id}" : id;

    private static string Contents(ValueList<SheetSlot> slots)
    {
        var parts = slots.Where(slot => slot.Name is not null).Select(slot => $"{SheetWords.Number(slot.Number)} {slot.Name}").ToList();
        var silent = SheetWords.Runs(slots.Where(slot => slot.Name is null).Select(slot => slot.Number));
        if (silent.Length > 0)
        {
            parts.Add($"{silent} free");
        }

        return string.Join("; ", parts);
    }
}
