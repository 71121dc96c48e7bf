using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Writes the drawings of sheets as one SVG file: what runs between the devices, then device by device, one below the other.</summary>
/// <remarks>
/// SVG 1.1 that stands alone: black on white, generic faces, no scripts, styles or references. The user unit is a millimetre. Show, date, revision,
/// code and view head every drawing; the cautions stand at the top. LF only. Thread safe.
/// </remarks>
public static class SvgSheetWriter
{
    private const double Margin = 6;
    private const double TextSize = 3.6;
    private const double LineHeight = 4.8;

    /// <summary>Writes drawings; the parts of the sheet say whether the one of all devices and those of single devices are wanted.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var body = new StringBuilder();
        var y = Head(body, sheet);
        foreach (var (title, flow) in Flows(sheet))
        {
            y = Add(body, sheet, title, flow, y);
        }

        var width = FlowSvg.Number(FlowLayout.Width + (2 * Margin));
        var height = FlowSvg.Number(y + Margin);
        return $"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" "
            + $"viewBox=\"0 0 {width} {height}\" font-family=\"sans-serif\">\n"
            + $"<title>{HtmlText.Escape(string.Join(" \u00b7 ", [sheet.Head.Title, .. PageLayout.Meta(sheet.Head)]))}</title>\n"
            + $"<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n{body}</svg>\n";
    }

    private static IEnumerable<(string Title, SheetFlow Flow)> Flows(Sheet sheet)
    {
        var all = sheet.Parts.Contains(SheetSection.Flow) ? sheet.Flows.Select(flow => (flow.Title, flow)) : [];
        return sheet.Parts.Contains(SheetSection.Devices)
            ? all.Concat(sheet.Devices.SelectMany(device => device.Flows.Select(flow => ($"{device.Label}: {flow.Title}", flow))))
            : all;
    }

    private static double Head(StringBuilder body, Sheet sheet)
    {
        var y = Margin + 7;
        body.Append(FlowSvg.Text(Margin, y, 7, true, FlowText.Fit(sheet.Head.Title, FlowLayout.Width - 45, 7, true)));
        Code(body, sheet, y);
        y += 6;
        body.Append(FlowSvg.Text(Margin, y, TextSize, false, string.Join(" \u00b7 ", PageLayout.Meta(sheet.Head))));
        y += 7;
        body.Append(FlowSvg.Text(Margin, y, TextSize, true, PageLayout.CautionsTitle));
        foreach (var line in sheet.Cautions.Append(SheetWords.ViewNote(sheet.Head.View)).Append(FlowSvg.Legend).SelectMany(Lines))
        {
            y += LineHeight;
            body.Append(FlowSvg.Text(Margin, y, TextSize, false, line));
        }

        return y + LineHeight;
    }

    private static void Code(StringBuilder body, Sheet sheet, double y) =>
        body.Append(FlowSvg.Text(Margin + FlowLayout.Width, y, 8.5, true, sheet.Head.Code, "end"));

    private static IEnumerable<string> Lines(string text) => TextTable.Wrap(VisibleText.OfPlain(text), (int)(FlowLayout.Width / (TextSize * 0.53)));

    private static double Add(StringBuilder body, Sheet sheet, string title, SheetFlow flow, double y)
    {
        var layout = new FlowLayout(flow);
        y += 6;
        body.Append(
            CultureInfo.InvariantCulture,
            $"<path d=\"M{FlowSvg.Number(Margin)} {FlowSvg.Number(y)} h{FlowSvg.Number(FlowLayout.Width)}\" stroke=\"#000\" stroke-width=\"0.7\"/>\n"
        );
        y += 8.5;
        body.Append(FlowSvg.Text(Margin, y, 6, true, FlowText.Fit(title, FlowLayout.Width - 45, 6, true)));
        Code(body, sheet, y);
        y += 5;
        var meta = string.Join(" \u00b7 ", [sheet.Head.Title, .. PageLayout.Meta(sheet.Head)]);
        body.Append(FlowSvg.Text(Margin, y, TextSize, false, FlowText.Fit(meta, FlowLayout.Width, TextSize, false)));
        y += 2;
        body.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate({FlowSvg.Number(Margin)} {FlowSvg.Number(y)})\">\n");
        FlowSvg.Draw(body, layout);
        body.Append("</g>\n");
        return y + layout.Height;
    }
}
