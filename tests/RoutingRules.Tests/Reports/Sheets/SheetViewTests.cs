using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Tests.Reports.Sheets;

// Performer's and audience's sides: standard theatre usage, stage left = house right.
public sealed class SheetViewTests
{
    [Theory]
    [InlineData(SheetView.House, "Fiddle corner (house right)", "Drum corner (house left)")]
    [InlineData(SheetView.Stage, "Fiddle corner (stage left)", "Drum corner (stage right)")]
    public void The_view_turns_the_sides_of_zones(SheetView view, string left, string right)
    {
        var sheet = SheetShow.Build(SheetShow.Full, new SheetOptions { View = view });

        Assert.Equal([null, right, left, right], sheet.Devices.Select(device => device.Zone));
        Assert.Equal([right, null, null], sheet.Walk.Select(stop => stop.Zone));
        Assert.Contains(left, sheet.Gaps[1].Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SheetView.House, "Sides as the audience sees them (house): house left = stage right")]
    [InlineData(SheetView.Stage, "Sides as the performers see them (stage): stage right = house left")]
    public void Every_page_says_which_view_it_uses(SheetView view, string note)
    {
        var pages = TextSheetWriter.Write(SheetShow.Build(SheetShow.Full, new SheetOptions { View = view })).Split('\f');

        Assert.Equal(15, pages.Length);
        Assert.All(pages, page => Assert.Contains(note, page, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Stage left", "Stage left (house right)", "Stage left")]
    [InlineData("HOUSE RIGHT", "HOUSE RIGHT", "HOUSE RIGHT (stage left)")]
    public void A_zone_named_after_its_side_is_not_said_twice(string name, string house, string stage)
    {
        var zone = new Zone
        {
            Id = new("z"),
            Name = name,
            Side = ZoneSide.HouseRight,
        };

        Assert.Equal(house, SheetWords.Zone(zone, SheetView.House));
        Assert.Equal(stage, SheetWords.Zone(zone, SheetView.Stage));
    }

    [Fact]
    public void A_zone_without_a_side_is_only_named() =>
        Assert.Equal("Mix position", SheetWords.Zone(new Zone { Id = new("z"), Name = "Mix position" }, SheetView.House));
}
