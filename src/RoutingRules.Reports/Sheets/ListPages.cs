using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out the lists that are read, not ticked: inputs, outputs, packs.</summary>
internal static class ListPages
{
    public static IEnumerable<Page> Inputs(Sheet sheet)
    {
        if (sheet.LineChecks.IsEmpty)
        {
            yield break;
        }

        var consoles = CheckPages.Consoles(sheet.LineChecks);
        var page = new Page { Title = "Input list" };
        page.Facts.Add("Every line by the channel of its first console.");
        var table = new PageTable
        {
            Title = "Lines",
            HasBigFirst = true,
            RowColumns = 2,
            NeedsHeadings = true,
            Columns =
            [
                .. consoles.Select((console, i) => new PageColumn(console, i == 0 ? 11 : 9, $"{console} ")),
                ("Line", 21),
                ("Enters at", 20, "from "),
                ("Equipment, stand, place", 24),
                ("Phantom", 12, DevicePages.PhantomLead),
            ],
        };
        table.Rows.AddRange(
            sheet.LineChecks.Select(row => new PageRow
            {
                Cells =
                [
                    .. consoles.Select((console, i) => Channels(row, console, i == 0)),
                    [.. PageLayout.Strong(row.Line.Name), .. PageLayout.Change(row.Change)],
                    row.Enters.IsEmpty
                        ? [new PageLine("no input yet", PageLineStyle.Mark)]
                        : [.. PageLayout.Cell([.. row.Enters.Select((place, i) => i == 0 ? place.ToString() : $"and {place}")]), .. CheckPages.Ways(row)],
                    [.. CheckPages.Equipment(row.Line)],
                    row.Phantom is null ? [] : DevicePages.Phantom(row.Phantom),
                ],
            })
        );
        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        yield return page;
    }

    /// <summary>Where a line does not arrive, the channel stands in a frame.</summary>
    private static List<PageLine> Channels(LineCheck row, string console, bool isStrong) =>
        [
            .. row
                .Ticks.Where(tick => string.Equals(tick.DeviceLabel, console, StringComparison.Ordinal))
                .Select(tick =>
                {
                    var mark = tick.At.Group.Value == "channel" ? tick.At.Mark : $"{tick.At.Group} {tick.At.Mark}";
                    return tick.Arrives
                        ? new PageLine(mark, isStrong ? PageLineStyle.Strong : PageLineStyle.Plain)
                        : new PageLine($"not at {mark}", PageLineStyle.Mark);
                }),
        ];

    public static IEnumerable<Page> Outputs(Sheet sheet)
    {
        var page = new Page { Title = "Output list" };
        page.Facts.Add("Every output that carries something or is meant to, device by device.");
        var table = new PageTable
        {
            Title = "Outputs",
            HasBigFirst = true,
            RowColumns = 2,
            FirstPercent = 16,
            Columns = [("Out", 13), ("Signal", 29), ("Comes from", 28, "from "), ("Goes to", 30, "to ")],
        };
        foreach (var device in sheet.Devices)
        {
            var rows = device.Outputs.SelectMany(group => group.Rows).Where(row => !row.IsFree || row.Change is not null).ToArray();
            if (rows.Length > 0)
            {
                table.Rows.Add(new PageRow { IsHeading = true, Across = device.Zone is null ? device.Label : $"{device.Zone}: {device.Label}" });
                table.Rows.AddRange(rows.Select(Output));
            }
        }

        if (table.Rows.Count > 0)
        {
            PageLayout.AddBlankRows(table, sheet);
            page.Tables.Add(table);
            yield return page;
        }
    }

    private static PageRow Output(SheetOutput row) =>
        new()
        {
            Cells =
            [
                [.. PageLayout.Strong(row.At.Mark), .. PageLayout.Cell(row.At.Group.Value == "out" ? null : row.At.Group.Value)],
                [.. DevicePages.Named(row.Signal, row.Label, row.Marks, row.Reason), .. PageLayout.Change(row.Change)],
                row.Signal is null ? [] : PageLayout.Cell(DevicePages.Source(row.Signal)),
                [.. row.GoesTo.SelectMany(end => DevicePages.End(end)), .. DevicePages.Position(row)],
            ],
        };

    public static IEnumerable<Page> Packs(Sheet sheet)
    {
        if (sheet.Packs.IsEmpty)
        {
            yield break;
        }

        var page = new Page { Title = "Packs and people" };
        page.Facts.Add("Who hears which mix, on which pack, from which output. Hand a pack over only after a technician has heard it at low level.");
        var table = new PageTable
        {
            Title = "Packs",
            HasBigFirst = true,
            RowColumns = 2,
            NeedsHeadings = true,
            Columns = [("Pack", 12), ("Person", 20), ("Mix", 24), ("Output", 36, "at "), ("Heard first", 8)],
        };
        table.Rows.AddRange(
            sheet.Packs.Select(row => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong(row.Pack ?? "\u2013"),
                    [.. row.Person is null ? [] : PageLayout.Strong(row.Person), .. PageLayout.Cell(row.Position is null ? null : $"place: {row.Position}")],
                    [
                        .. PageLayout.Strong(row.Mix),
                        .. PageLayout.Cell(row.Role.Value, Limiter(row)),
                        .. DevicePages.Notes(row.Source),
                        .. PageLayout.Change(row.Change),
                    ],
                    row.Outputs.IsEmpty
                        ? [new PageLine("arrives nowhere yet", PageLineStyle.Mark)]
                        : DevicePages.Notes([.. row.Outputs.Select(DevicePages.Path)]),
                    PageLayout.Tick(""),
                ],
            })
        );
        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        yield return page;
    }

    private static string? Limiter(SheetPack row) =>
        row.Limiter == true ? "limiter declared"
        : row.Limiter == false ? "NO LIMITER"
        : row.IsInEar ? "no limiter declared"
        : null;
}
