using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class PowerSheetTests
{
    [Fact]
    public void Each_supply_has_its_devices_and_those_without_one_come_last() =>
        Assert.Equal(
            [("mix-ups", "Desk", ""), ("wall", "Desk", "mix-ups"), ("wall", "SL box", ""), (null, "SR box", ""), (null, "Right amp", "")],
            SheetShow.Build(Powered()).Powered.Select(row => (row.Supply, row.Device, string.Join(' ', row.Supply == "wall" ? row.AlsoOn : [])))
        );

    [Fact]
    public void A_device_on_two_supplies_names_the_other_at_each() =>
        Assert.Equal(["wall", "mix-ups"], SheetShow.Build(Powered()).Powered.Where(row => row.Device == "Desk").SelectMany(row => row.AlsoOn));

    [Fact]
    public void A_show_that_names_no_supply_has_no_such_page()
    {
        Assert.Empty(SheetShow.Build(SheetShow.Full).Powered);
        Assert.DoesNotContain("\nPower\n", TextSheetWriter.Write(SheetShow.Build(SheetShow.Full)), StringComparison.Ordinal);
        Assert.Contains("\nPower\n", TextSheetWriter.Write(SheetShow.Build(Powered())), StringComparison.Ordinal);
    }

    [Fact]
    public void A_device_that_moved_to_another_supply_is_marked()
    {
        var sheet = SheetShow.Build(Powered(), new SheetOptions { Since = ShowResolver.Resolve(SheetShow.Full, new ProfileLibrary([])) });

        Assert.All(sheet.Powered, row => Assert.Equal(SheetChangeKind.New, row.Change!.Kind));
        Assert.Contains(sheet.Differences, row => row.Subject == "SL box on a supply" && row.Now == "wall");
    }

    [Fact]
    public void The_list_has_zone_and_the_other_supplies() =>
        Assert.Equal(
            ["wall", "SL box", "box-l", "Fiddle corner (house right)", "", ""],
            SheetLists.Of(SheetShow.Build(Powered()), SheetListKind.Power).Rows[2]
        );

    private static Show Powered() => With(("desk", ["mix-ups", "wall"]), ("box-l", ["wall"]));

    private static Show With(params (string Device, string[] Supplies)[] power) =>
        SheetShow.Full with
        {
            Rig = SheetShow.Full.Rig with
            {
                Devices =
                [
                    .. SheetShow.Full.Rig.Devices.Select(device =>
                        device with
                        {
                            Power =
                            [
                                .. power
                                    .Where(entry => entry.Device == device.Id.Value)
                                    .SelectMany(entry => entry.Supplies)
                                    .Select(supply => new Id<PowerSource>(supply)),
                            ],
                        }
                    ),
                ],
            },
        };
}
