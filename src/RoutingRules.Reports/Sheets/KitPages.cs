using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Lays out what is loaded and what it is powered from.</summary>
internal static class KitPages
{
    public static IEnumerable<Page> Kit(Sheet sheet)
    {
        if (sheet.Kit.IsEmpty)
        {
            yield break;
        }

        var page = new Page { Title = "Kit list" };
        page.Facts.Add(
            "What the show names, counted. Spares are common practice: one for each ten begun; none of what others bring, of looms, and of what is not stated."
        );
        var table = new PageTable
        {
            Title = "To load",
            HasBigFirst = true,
            RowColumns = 2,
            NeedsHeadings = true,
            Columns = [("Take", 8), ("What", 36), ("Needed", 18), ("For", 30, "for "), ("Done", 8)],
        };
        foreach (var kind in sheet.Kit.GroupBy(item => item.Kind))
        {
            table.Rows.Add(new PageRow { IsHeading = true, Across = Title(kind.Key) });
            table.Rows.AddRange(kind.Select(Row));
        }

        PageLayout.AddBlankRows(table, sheet);
        page.Tables.Add(table);
        yield return page;
    }

    private static PageRow Row(SheetKitItem item) =>
        new()
        {
            Cells =
            [
                PageLayout.Strong(SheetWords.Number(item.Count + item.Spare)),
                [
                    .. PageLayout.Strong(item.Name),
                    .. PageLayout.Cell(item.SuppliedBy is null ? null : $"from {item.SuppliedBy}"),
                    .. PageLayout.Change(item.Change),
                ],
                PageLayout.Cell(item.Spare == 0 ? null : $"{SheetWords.Number(item.Count)} and {SheetWords.Number(item.Spare)} spare"),
                DevicePages.Notes(string.Join(", ", item.For)),
                PageLayout.Tick(""),
            ],
        };

    public static string Title(SheetKitKind kind) =>
        kind switch
        {
            SheetKitKind.Microphone => "Microphones",
            SheetKitKind.DirectBox => "Direct boxes",
            SheetKitKind.Stand => "Stands",
            SheetKitKind.Cable => "Cables",
            SheetKitKind.Pack => "Packs",
            _ => "Other equipment",
        };

    public static IEnumerable<Page> Power(Sheet sheet)
    {
        if (sheet.Powered.IsEmpty)
        {
            yield break;
        }

        var page = new Page { Title = "Power" };
        page.Facts.Add("Each supply with the devices on it: what goes dark together.");
        var table = new PageTable
        {
            Title = "Devices by supply",
            RowColumns = 2,
            NeedsHeadings = true,
            Columns = [("Device", 34), ("Stands at", 30), ("Also on", 28, "also on "), ("On", 8)],
        };
        foreach (var supply in sheet.Powered.GroupBy(row => row.Supply))
        {
            table.Rows.Add(new PageRow { IsHeading = true, Across = supply.Key ?? "No supply named" });
            table.Rows.AddRange(
                supply.Select(row => new PageRow
                {
                    Cells =
                    [
                        [.. PageLayout.Strong(row.Device), .. PageLayout.Change(row.Change)],
                        PageLayout.Cell(row.Zone),
                        PageLayout.Cell(row.AlsoOn.IsEmpty ? null : string.Join(", ", row.AlsoOn)),
                        PageLayout.Tick(""),
                    ],
                })
            );
        }

        page.Tables.Add(table);
        yield return page;
    }
}
