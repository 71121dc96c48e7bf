using System.Globalization;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Lays sheets out as pages: what is missing, one page for each device, the check lists.</summary>
internal static class PageLayout
{
    public const string CautionsTitle = "Before you touch anything";

    public static List<Page> Pages(Sheet sheet)
    {
        var pages = new List<Page> { Overview(sheet) };
        pages.AddRange(sheet.Devices.Select(DevicePages.Page));
        pages.AddRange(CheckPages.Pages(sheet));
        return pages;
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
    }

    /// <summary>The line that each printed page repeats.</summary>
    public static IEnumerable<string> Running(SheetHead head, Page page) =>
        [head.Title, .. Meta(head), page.Aside is null ? page.Title : $"{page.Title} ({page.Aside})"];

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
            var gaps = new PageTable { Title = "Not patched yet", Columns = [("What", 27), ("What is missing", 67), ("Done", 6)] };
            gaps.Rows.AddRange(sheet.Gaps.Select(gap => new PageRow { Cells = [Strong(gap.Subject), Cell(gap.Text), Tick("")] }));
            page.Tables.Add(gaps);
        }

        var devices = new PageTable { Title = "Devices", Columns = [("Device", 34), ("Stands at", 33), ("Type", 33)] };
        devices.Rows.AddRange(sheet.Devices.Select(device => new PageRow
        {
            Cells = [[new PageLine(device.Label, PageLineStyle.Strong), .. Cell(DevicePages.Id(device))], Cell(device.Zone), Cell(device.Type)],
        }));
        page.Tables.Add(devices);
        return page;
    }

    public static List<PageLine> Tick(string text) => [new PageLine(text, PageLineStyle.Tick)];
}
