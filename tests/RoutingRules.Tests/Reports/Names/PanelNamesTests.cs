using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Names;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Reports.Names;

public class PanelNamesTests
{
    private static readonly DeviceProfile Box = SmallProfiles.Box with
    {
        PortGroups =
        [
            .. SmallProfiles.Box.PortGroups.Select(group =>
                group.Id.Value == "in" ? group with { PanelLabels = ["A1", "A2", "B1", "B2", "C1", "C2", "D1", "D2"] } : group
            ),
        ],
    };

    private static PanelNames Names(NameStyle style, string? label = "SR box")
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box-r", Box));
        var rig = show.Rig;
        show = show with { Rig = rig with { Devices = [rig.Devices[0], rig.Devices[1] with { Label = label }] } };
        return PanelNames.Of(style, RoutingEngine.CreateBuilder().Build().Resolve(show));
    }

    [Theory]
    [InlineData("Pull it out of box-r/in/3.", "Pull it out of SR box input B1.")]
    [InlineData("Off at box-r/in/1, 3-4; desk/aux/2.", "Off at SR box inputs A1, B1-B2; desk aux 2.")]
    [InlineData("At box-r/out/5 pull 'x'", "At SR box output 5 pull 'x'")]
    [InlineData("desk/transmit/1-2, 4", "desk transmit slots 1-2, 4")]
    [InlineData("box-r/receive/1", "SR box receive slot 1")]
    public void A_point_is_called_by_the_label_of_its_device_and_the_mark_on_the_panel(string written, string called)
    {
        Assert.Equal(called, Names(NameStyle.Panel).In(written));
    }

    [Theory]
    [InlineData("box-x/in/3 is on no device of the rig")]
    [InlineData("box-r/tape/3 is of no group")]
    [InlineData("and/or/1x, box-r/in, box-r/in/, box-r/in/3a, box-r/in/123456789")]
    [InlineData("/home/box-r/in/3 and x/box-r/in/3/y")]
    [InlineData("box-r/in/3.5")]
    [InlineData("SR box, no address")]
    public void What_is_no_address_of_the_rig_stays_as_it_is(string text)
    {
        Assert.Equal(text, Names(NameStyle.Panel).In(text));
    }

    [Fact]
    public void Both_names_say_what_the_document_writes_once()
    {
        Assert.Equal(
            "SR box input B1 (box-r/in/3) is on, SR box input B1 must be off; desk/channel/2 has no other name.",
            Names(NameStyle.Both).In("box-r/in/3 is on, box-r/in/3 must be off; desk/channel/2 has no other name.")
        );
    }

    [Fact]
    public void Ids_change_nothing()
    {
        Assert.Equal("At box-r/in/3.", Names(NameStyle.Ids).In("At box-r/in/3."));
        Assert.Equal("box-r", Names(NameStyle.Ids).Device(new Id<Device>("box-r")));
    }

    [Fact]
    public void Whoever_stands_at_the_device_needs_no_name_of_it()
    {
        Assert.Equal("Route input A1 to desk channel 1.", Names(NameStyle.Panel).In("Route box-r/in/1 to desk/channel/1.", new Id<Device>("box-r")));
    }

    [Fact]
    public void A_device_without_a_label_is_called_by_its_id()
    {
        Assert.Equal("box-r input B1", Names(NameStyle.Panel, label: null).In("box-r/in/3"));
        Assert.Equal("SR box", Names(NameStyle.Panel).Device(new Id<Device>("box-r")));
    }

    [Fact]
    public void The_last_of_several_shows_names_a_device()
    {
        var engine = RoutingEngine.CreateBuilder().Build();
        var first = SmallShow.Of(("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        var last = SmallShow.Of(("box", SmallProfiles.Box));
        last = last with { Rig = last.Rig with { Devices = [last.Rig.Devices[0] with { Label = "Riser box" }] } };

        var names = PanelNames.Of(NameStyle.Panel, engine.Resolve(first), engine.Resolve(last));

        Assert.Equal("Riser box output 1 to amp input 1", names.In("box/out/1 to amp/in/1"));
    }

    [Fact]
    public void A_label_cannot_steer_a_terminal()
    {
        Assert.Equal("SR\\u202e box input B1", Names(NameStyle.Panel, label: "SR\u202E box").In("box-r/in/3"));
    }
}
