using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Lays sheets out as pages: what is missing, one page for each device, the check lists.</summary>
internal static class PageLayout
{
    public const string CautionsTitle = "Before you touch anything";

    /// <summary>A sheet as pages.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="draws">False for a writer that cannot draw: what runs between devices is then a table.</param>
    public static PageSet Set(Sheet sheet, bool draws = false) =>
        new()
        {
            Title = sheet.Head.Title,
            Meta = Meta(sheet.Head).ToValueList(),
            Code = sheet.Head.Code,
            ViewNote = SheetWords.ViewNote(sheet.Head.View),
            Cautions = sheet.Cautions,
            RepeatsCautions = true,
            IsLargeType = sheet.IsLargeType,
            Pages = Pages(sheet, draws),
        };

    /// <summary>The pages of the parts asked for; the overview when these have nothing to show.</summary>
    private static List<Page> Pages(Sheet sheet, bool draws)
    {
        var pages = new List<Page>();
        foreach (var part in sheet.Parts)
        {
            var own = Of(sheet, part).ToList();
            for (var i = 0; i < own.Count; i++)
            {
                own[i].HasAllCautions = pages.Count == 0 || (i == 0 && part == SheetSection.Devices);
                own[i].MaySharePaper = !own[i].HasAllCautions;
                own[i].FollowsOn |= pages.Count > 0 && (IsListBelow(part));
                pages.Add(own[i]);
            }
        }

        foreach (var page in draws ? [] : pages.Where(page => page.Tables.Count == 0))
        {
            page.Tables.AddRange(page.Flows.Select(FlowTable.Of));
        }

        return pages.Count > 0 ? pages : [Overview(sheet)];
    }

    private static IEnumerable<Page> Of(Sheet sheet, SheetSection part) =>
        part switch
        {
            SheetSection.Overview => [Overview(sheet)],
            SheetSection.Flow => sheet.Flows.IsEmpty ? [] : [Flow(sheet)],
            SheetSection.Inputs => ListPages.Inputs(sheet),
            SheetSection.Outputs => ListPages.Outputs(sheet),
            SheetSection.Devices => Devices(sheet),
            SheetSection.Packs => ListPages.Packs(sheet),
            SheetSection.Network => NetworkPages.Pages(sheet),
            _ => CheckPages.Pages(sheet, part),
        };

    /// <summary>Lists that need no paper of their own; the others are handed to somebody.</summary>
    private static bool IsListBelow(SheetSection part) => part is SheetSection.Outputs or SheetSection.Mixes or SheetSection.Packs or SheetSection.Network;

    private static IEnumerable<Page> Devices(Sheet sheet)
    {
        var isChosen = !sheet.Head.Selection.IsEmpty;
        var devices = sheet.Devices.Where(device => HasPage(sheet, device)).ToList();
        var pages = devices.Select(device => DevicePages.Page(device, sheet.HasDrawings || isChosen, isChosen));
        return isChosen ? pages : pages.Concat(NetworkTables.Page(devices));
    }

    private static bool HasPage(Sheet sheet, DeviceSheet device) => sheet.HasAllDevices || !device.IsOnlyCabled || IsChanged(device);

    private static bool IsChanged(DeviceSheet device) =>
        device.Change is not null
        || device.Outputs.Any(table => table.Rows.Any(row => row.Change is not null))
        || device.Inputs.Any(table => table.Rows.Any(row => row.Change is not null))
        || device.Channels.Any(table => table.Rows.Any(row => row.Change is not null))
        || device.Jacks.Any(jack => jack.Change is not null);

    private static Page Flow(Sheet sheet)
    {
        var page = new Page { Title = "Signal flow" };
        page.Facts.Add("Who sends what to whom. The pages of the devices go into single signals.");
        page.Flows.AddRange(sheet.Flows);
        return page;
    }

    /// <summary>Venue, date, revision and code, as far as they are known.</summary>
    public static IEnumerable<string> Meta(SheetHead head)
    {
        if (head.Venue is not null)
        {
            yield return head.Venue;
        }

        if (head.Date is { } date)
        {
            yield return date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }

        yield return head.Revision is null ? "no revision" : $"revision {head.Revision}";
        yield return $"code {head.Code}";
        yield return SheetWords.View(head.View);
    }

    /// <summary>Rows to write in at the end of a list.</summary>
    public static void AddBlankRows(PageTable table, Sheet sheet)
    {
        if (sheet.BlankRows > 0)
        {
            table.Rows.Add(new PageRow { Across = "Late extras", IsHeading = true });
            table.Rows.AddRange(Enumerable.Repeat(new PageRow { IsBlank = true }, sheet.BlankRows));
        }
    }

    /// <summary>The mark of what differs from the older revision.</summary>
    public static IEnumerable<PageLine> Change(SheetChange? change) => change is null ? [] : [new PageLine(SheetWords.Change(change), PageLineStyle.Change)];

    public static List<PageLine> Cell(params string?[] lines) =>
        [.. lines.Where(line => !string.IsNullOrEmpty(line)).Select(line => new PageLine(line!, PageLineStyle.Plain))];

    public static List<PageLine> Strong(string text) => [new PageLine(text, PageLineStyle.Strong)];

    private static Page Overview(Sheet sheet)
    {
        var page = new Page { Title = "Overview" };
        if (!sheet.Head.Selection.IsEmpty)
        {
            page.Facts.Add($"Only these devices were asked for: {string.Join(", ", sheet.Head.Selection)}.");
        }

        if (sheet.Gaps.IsEmpty)
        {
            page.Facts.Add("Nothing is left to patch: in the document every feed and line arrives where it shall.");
        }
        else
        {
            var gaps = new PageTable
            {
                Title = "Not patched yet",
                RowColumns = 2,
                Columns = [("What", 27), ("What is missing", 67), ("Done", 6)],
            };
            gaps.Rows.AddRange(sheet.Gaps.Select(gap => new PageRow { Cells = [Strong(gap.Subject), Cell(gap.Text), Tick("")] }));
            page.Tables.Add(gaps);
        }

        AddDifferences(page, sheet);
        var devices = new PageTable
        {
            Title = "Devices",
            RowColumns = 2,
            Columns = [("Device", 34), ("Stands at", 33), ("Type", 33)],
        };
        devices.Rows.AddRange(
            sheet.Devices.Select(device => new PageRow
            {
                Cells =
                [
                    [
                        new PageLine(device.Label, PageLineStyle.Strong),
                        .. Cell(DevicePages.Id(device), HasPage(sheet, device) ? null : "only cabled, no page"),
                        .. Change(device.Change),
                    ],
                    Cell(device.Zone),
                    Cell(device.Type),
                ],
            })
        );
        page.Tables.Add(devices);
        return page;
    }

    private static void AddDifferences(Page page, Sheet sheet)
    {
        if (sheet.Head.Since is not { } since)
        {
            return;
        }

        var name = Since(since);
        if (sheet.Differences.IsEmpty)
        {
            page.Facts.Add($"Nothing on these sheets differs from {name}.");
            return;
        }

        page.Facts.Add($"What differs from {name} is marked on every page.");
        var table = new PageTable { Title = $"Changed since {name}", Columns = [("What", 26), ("Was", 34), ("Is", 34), ("Done", 6)] };
        table.Rows.AddRange(
            sheet.Differences.Select(difference => new PageRow
            {
                Cells =
                [
                    Strong(difference.Subject),
                    difference.Kind == SheetChangeKind.New ? [new PageLine("NEW", PageLineStyle.Change)] : Cell(difference.Was),
                    difference.Kind == SheetChangeKind.Gone ? [new PageLine("GONE", PageLineStyle.Change)] : Cell(difference.Now),
                    Tick(""),
                ],
            })
        );
        page.Tables.Add(table);
    }

    public static string Since(SheetSince since)
    {
        var revision = since.Revision is null ? "the sheet without revision" : $"revision {since.Revision}";
        return since.Date is { } date
            ? $"{revision} of {date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} (code {since.Code})"
            : $"{revision} (code {since.Code})";
    }

    public static List<PageLine> Tick(string text) => [new PageLine(text, PageLineStyle.Tick)];
}
