using AngleSharp.Html.Parser;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class SheetOptionsTests
{
    [Fact]
    public void Devices_zones_and_sides_add_up_in_rig_order()
    {
        Assert.Equal(["SR box", "Right amp"], Labels(new SheetOptions { Zones = [new("sr")] }));
        Assert.Equal(["SL box"], Labels(new SheetOptions { Sides = [ZoneSide.HouseRight] }));
        Assert.Equal(["Desk", "SL box"], Labels(new SheetOptions { Sides = [ZoneSide.HouseRight], Devices = [new("desk")] }));
    }

    [Fact]
    public void What_is_not_there_is_refused_with_the_choices()
    {
        Refused(new SheetOptions { Zones = [new("up")] }, "The rig has no zone 'up'; it has sl, sr.");
        Refused(
            new SheetOptions { Sides = [ZoneSide.Centre] },
            "No device stands in centre; there are box-r in zone 'sr', house left, box-l in zone 'sl', house right, amp in zone 'sr', house left."
        );
        Refused(new SheetOptions { Devices = [new("x")] }, "The rig has no device 'x'; it has desk, box-r, box-l, amp.");
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetShow.Build(SheetShow.Full, new SheetOptions { BlankRows = 41 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetShow.Build(SheetShow.Full, new SheetOptions { BlankRows = -1 }));
    }

    [Fact]
    public void Parts_are_printed_in_their_order_each_once()
    {
        var text = TextSheetWriter.Write(
            SheetShow.Build(SheetShow.Full, new SheetOptions { Parts = [SheetSection.Packs, SheetSection.Inputs, SheetSection.Packs] })
        );

        Assert.Equal(["Input list", "Packs and people"], text.Split('\f').Select(page => page.Split('\n')[3]));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(5, 5)]
    public void Lists_end_with_blank_rows_for_late_extras(int rows, int expected)
    {
        var html = HtmlSheetWriter.Write(SheetShow.Build(SheetShow.Full, new SheetOptions { BlankRows = rows, Parts = [SheetSection.Lines] }));

        Assert.Equal(expected, html.Split("<tr class=\"blank\">").Length - 1);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_page_is_html_without_a_single_parse_error(bool isLarge)
    {
        var sheet = SheetShow.Build(SheetShow.Full, new SheetOptions { IsLargeType = isLarge, HasDrawings = true });
        var page = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(HtmlSheetWriter.Write(sheet));

        Assert.Equal(isLarge ? "large" : null, page.Body!.GetAttribute("class"));
        Assert.Equal(15, page.QuerySelectorAll("section").Length);
        Assert.Equal(
            1 + sheet.Devices.Sum(device => device.Flows.Count),
            page.QuerySelectorAll("figure > svg > rect:first-child").Length + page.QuerySelectorAll("figure > svg > path:first-child").Length
        );
        Assert.Empty(page.QuerySelectorAll("script, link, img, [src], [href]"));
    }

    [Fact]
    public void Nothing_in_any_part_tells_to_open_all_at_once()
    {
        var text = TextSheetWriter.Write(SheetShow.Build(SheetShow.Full)).ToUpperInvariant().Replace("\n", " ", StringComparison.Ordinal);

        Assert.Equal(text.Split("UNMUTE").Length, text.Split("NEVER UNMUTE EVERYTHING AT ONCE").Length);
        Assert.DoesNotContain("OPEN ALL", text, StringComparison.Ordinal);
    }

    private static string[] Labels(SheetOptions options) => [.. SheetShow.Build(SheetShow.Full, options).Devices.Select(device => device.Label)];

    private static void Refused(SheetOptions options, string expected)
    {
        var fault = Assert.Throws<ArgumentException>(() => SheetShow.Build(SheetShow.Full, options));
        Assert.StartsWith(expected, fault.Message, StringComparison.Ordinal);
    }
}
