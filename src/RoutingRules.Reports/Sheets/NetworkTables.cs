using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out what a device sends and takes on networks, and its jacks.</summary>
internal static class NetworkTables
{
    /// <summary>One page for all devices: who patches a panel does not read it, and it fills no sheet of its own.</summary>
    public static IEnumerable<Page> Page(IEnumerable<DeviceSheet> devices)
    {
        var page = new Page { Title = "Streams and jacks", FollowsOn = true };
        page.Facts.Add("What each device sends and takes on the networks, slot by slot, and where its network jacks lead.");
        foreach (var device in devices)
        {
            page.Tables.AddRange(Of(device, isNamed: true));
            if (Free(device).ToArray() is { Length: > 0 } free && page.Tables.Count > 0)
            {
                page.Tables[^1].Rows.Add(new PageRow { Across = $"Free slots: {string.Join("; ", free)}" });
            }
        }

        return page.Tables.Count == 0 ? [] : [page];
    }

    /// <param name="device">The device.</param>
    /// <param name="isNamed">True where the page does not say which device it is.</param>
    public static IEnumerable<PageTable> Of(DeviceSheet device, bool isNamed)
    {
        if (!device.Sent.IsEmpty)
        {
            yield return Sent(device, isNamed);
        }

        if (!device.Received.IsEmpty)
        {
            yield return Received(device, isNamed);
        }

        if (!device.Jacks.IsEmpty)
        {
            yield return Jacks(device, isNamed);
        }
    }

    /// <summary>Slots that no stream uses.</summary>
    public static IEnumerable<string> Free(DeviceSheet device) =>
        device.FreeSlots.GroupBy(run => run.Group).Select(runs => $"{runs.Key} {string.Join(", ", runs.Select(run => run.Numbers))}");

    private static string Title(DeviceSheet device, bool isNamed, string what) => $"{(isNamed ? device.Label : "Network")}: {what}";

    private static PageTable Sent(DeviceSheet device, bool isNamed)
    {
        var sent = new PageTable
        {
            Title = Title(device, isNamed, "sends"),
            RowColumns = 2,
            Columns = [("Slots", 18), ("Stream", 16), ("Carries", 38, "carries "), ("Goes to", 28, "to ")],
        };
        sent.Rows.AddRange(
            device.Sent.Select(stream => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong($"{stream.Slots.Group} {stream.Slots.Numbers}"),
                    DevicePages.Notes(StreamName(stream.Id, stream.IsLink), stream.Label),
                    DevicePages.Notes(Contents(stream.Contents)),
                    DevicePages.Notes([
                        .. stream.Receivers.Select(receiver =>
                            $"{receiver.DeviceLabel} {receiver.Slots.Group} {receiver.Slots.Numbers} (ch {receiver.Channels})"
                        ),
                    ]),
                ],
            })
        );

        return sent;
    }

    private static PageTable Received(DeviceSheet device, bool isNamed)
    {
        var received = new PageTable
        {
            Title = Title(device, isNamed, "takes"),
            RowColumns = 2,
            Columns = [("Slots", 18), ("Stream", 16), ("Brings", 38, "brings "), ("Comes from", 28, "from ")],
        };
        received.Rows.AddRange(
            device.Received.Select(stream => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong($"{stream.Slots.Group} {stream.Slots.Numbers}"),
                    DevicePages.Notes(StreamName(stream.Id, stream.IsLink), $"ch {stream.Channels}"),
                    DevicePages.Notes(Contents(stream.Contents)),
                    DevicePages.Notes($"{stream.SenderLabel} {stream.SenderSlots.Group} {stream.SenderSlots.Numbers}"),
                ],
            })
        );

        return received;
    }

    private static PageTable Jacks(DeviceSheet device, bool isNamed)
    {
        var jacks = new PageTable
        {
            Title = isNamed ? $"{device.Label}: jacks" : "Network jacks",
            RowColumns = 2,
            Columns = [("Jack", 16), ("To", 32, "to "), ("Cable", 46), ("Done", 6)],
        };
        jacks.Rows.AddRange(
            device.Jacks.Select(jack => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong(jack.At.Here),
                    PageLayout.Cell(jack.FarEnd?.ToString() ?? "free"),
                    [.. DevicePages.Notes(jack.Link is null ? null : $"{jack.Link}, {jack.Network}", jack.Cable), .. PageLayout.Change(jack.Change)],
                    jack.Link is null ? [] : PageLayout.Tick(""),
                ],
            })
        );

        return jacks;
    }

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
