using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out the check lists.</summary>
internal static class CheckPages
{
    public static IEnumerable<Page> Pages(Sheet sheet, SheetSection part) =>
        part switch
        {
            SheetSection.Lines when !sheet.LineChecks.IsEmpty => [ByChannel(sheet, Consoles(sheet.LineChecks))],
            SheetSection.Walk when !sheet.LineChecks.IsEmpty => [ByWalk(sheet, Consoles(sheet.LineChecks))],
            SheetSection.Mixes when !sheet.OutputChecks.IsEmpty => [Outputs(sheet)],
            _ => [],
        };

    private static Page ByChannel(Sheet sheet, string[] consoles)
    {
        var page = new Page { Title = "Line check by channel" };
        page.Facts.Add("One box for each console or recorder that receives the line. Tick it when the right source is heard there.");
        var table = new PageTable
        {
            Title = "Lines",
            RowColumns = 2,
            NeedsHeadings = true,
            Columns = [("Line", 19), ("Enters at", 19), .. Columns(consoles)],
        };
        table.Rows.AddRange(sheet.LineChecks.Select(row => Row(row, Enters(row), consoles)));
        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        return page;
    }

    private static Page ByWalk(Sheet sheet, string[] consoles)
    {
        var page = new Page { Title = "Line check by walk" };
        page.Facts.Add("The same lines in walking order: place by place, box by box, number by number.");
        var table = new PageTable
        {
            Title = "Lines",
            RowColumns = 2,
            NeedsHeadings = true,
            Columns = [("Line", 20), ("At", 15), .. Columns(consoles)],
        };
        foreach (var stop in sheet.Walk)
        {
            table.Rows.Add(
                new PageRow
                {
                    IsHeading = true,
                    Across =
                        stop.DeviceLabel is null ? "No input yet"
                        : stop.Zone is null ? stop.DeviceLabel
                        : $"{stop.Zone}: {stop.DeviceLabel}",
                }
            );
            table.Rows.AddRange(stop.Lines.Select(row => Row(row, Here(row), consoles)));
            if (stop.DeviceLabel is not null)
            {
                table.Rows.Add(new PageRow { Across = stop.Spares.IsEmpty ? "No spare input here" : $"Spare here: {string.Join("; ", stop.Spares)}" });
            }
        }

        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        return page;
    }

    private static PageColumn[] Columns(string[] consoles) =>
        [
            ("Equipment, stand, place", 20),
            ("Phantom", 11, DevicePages.PhantomLead),
            ("Spare", 10, "spare "),
            .. consoles.Select(console => new PageColumn($"{console} ch", Math.Max(8, 24 / consoles.Length), $"{console} ")),
        ];

    private static PageRow Row(LineCheck row, List<PageLine> place, string[] consoles) =>
        new()
        {
            Cells =
            [
                [.. PageLayout.Strong(row.Line.Name), .. PageLayout.Change(row.Change)],
                place,
                [.. Equipment(row.Line)],
                row.Phantom is null ? [] : DevicePages.Phantom(row.Phantom),
                row.Spare is null ? [] : DevicePages.Notes(Spare(row, row.Spare)),
                .. consoles.Select(console => Ticks(row, console)),
            ],
        };

    /// <summary>The mark alone where the spare is of the same kind as the input it stands in for.</summary>
    private static string Spare(LineCheck row, SheetPlace spare) =>
        row.Enters.Any(place => place.Device == spare.Device && place.Group == spare.Group) ? spare.Mark : spare.Here;

    private static List<PageLine> Enters(LineCheck row) =>
        row.Enters.IsEmpty
            ? [new PageLine("no input yet", PageLineStyle.Mark)]
            : [.. row.Enters.SelectMany((place, i) => i == 0 ? PageLayout.Strong(place.ToString()) : PageLayout.Cell($"and {place}")), .. Ways(row)];

    /// <summary>The device is in the heading, so the connector alone says where; a split names its other ends.</summary>
    private static List<PageLine> Here(LineCheck row) =>
        row.Enters.IsEmpty
            ? []
            : [.. PageLayout.Strong(row.Enters[0].Here), .. PageLayout.Cell([.. row.Enters.Skip(1).Select(place => $"and {place}")]), .. Ways(row)];

    public static List<PageLine> Ways(LineCheck row) => PageLayout.Cell([.. row.Ways.Select(way => $"way: {way}")]);

    public static IEnumerable<PageLine> Equipment(SheetLineInfo line) =>
        PageLayout.Cell(
            line.Equipment,
            line.Stand is null ? null : $"stand: {line.Stand}",
            line.Position,
            line.SuppliedBy is null ? null : $"from {line.SuppliedBy}",
            line.Notes
        );

    private static List<PageLine> Ticks(LineCheck row, string console)
    {
        var cell = new List<PageLine>();
        foreach (var tick in row.Ticks)
        {
            if (string.Equals(tick.DeviceLabel, console, StringComparison.Ordinal))
            {
                var channel = tick.At.Group.Value == "channel" ? tick.At.Mark : $"{tick.At.Group} {tick.At.Mark}";
                cell.Add(tick.Arrives ? new PageLine(channel, PageLineStyle.Tick) : new PageLine($"not at {channel}", PageLineStyle.Mark));
            }
        }

        return cell;
    }

    /// <summary>The receiving devices, in the order in which the list meets them.</summary>
    public static string[] Consoles(ValueList<LineCheck> rows)
    {
        var consoles = new List<string>();
        foreach (var row in rows)
        {
            foreach (var tick in row.Ticks)
            {
                if (!consoles.Contains(tick.DeviceLabel, StringComparer.Ordinal))
                {
                    consoles.Add(tick.DeviceLabel);
                }
            }
        }

        return [.. consoles];
    }

    private static Page Outputs(Sheet sheet)
    {
        var page = new Page { Title = "Output check" };
        page.Facts.Add(
            "Mix by mix, in-ear mixes first. Bring up one output at a time from low level, say the words in the first column into it, check it, "
                + "close it, then the next."
        );
        page.Facts.Add("Never unmute everything at once.");
        page.Facts.Add("In-ear mixes: a technician listens on a pack at low level before a performer wears it.");
        var table = new PageTable
        {
            Title = "Mixes",
            RowColumns = 2,
            Columns = [("Say", 24), ("What, for whom", 21), ("Arrives at", 30), ("How", 25)],
        };
        table.Rows.AddRange(
            sheet.OutputChecks.Select(row => new PageRow
            {
                Cells =
                [
                    [.. PageLayout.Strong(row.Announce), .. PageLayout.Change(row.Change)],
                    [
                        .. row.IsInEar ? [new PageLine(SheetWords.Mark(SheetMark.InEar), PageLineStyle.Mark)] : Array.Empty<PageLine>(),
                        .. row.Role == FeedRole.InEar ? [] : PageLayout.Cell(row.Role.Value),
                        .. Who(row),
                        .. DevicePages.Notes(row.Source, row.SourceLabel),
                    ],
                    [
                        .. row.Places.SelectMany(place =>
                            place.Arrives.IsEmpty
                                ? [new PageLine($"not at {place.Wanted}", PageLineStyle.Mark)]
                                : place.Arrives.Select(path => new PageLine(DevicePages.Path(path), PageLineStyle.Tick))
                        ),
                    ],
                    [
                        .. row.How.Contains("NO LIMITER", StringComparison.Ordinal) ? PageLayout.Cell(row.How) : DevicePages.Notes(row.How),
                        .. PageLayout.Cell(row.Notes),
                    ],
                ],
            })
        );
        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        return page;
    }

    private static List<PageLine> Who(OutputCheck row) =>
        PageLayout.Cell(row.Person, row.Pack is null ? null : $"pack {row.Pack}", row.Position is null ? null : $"place: {row.Position}");
}
