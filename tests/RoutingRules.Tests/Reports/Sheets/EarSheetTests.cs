using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

/// <summary>What sheets say of a monitor mix that ends in somebody's ears, and of an output with two cables.</summary>
public sealed class EarSheetTests
{
    private static DeviceProfile Headphones { get; } =
        SmallProfiles.Amplifier with
        {
            Id = new("test/phones"),
            Kind = new DeviceKind("headphone-amplifier"),
            PortGroups = SmallProfiles
                .Amplifier.PortGroups.Select(group => group.Kind == PortKind.Output ? group with { Level = SignalLevel.Headphone } : group)
                .ToValueList(),
        };

    /// <summary>A wedge, and a mix of role monitor at a box output with the cables said.</summary>
    private static Show Make(params Cable[] cables)
    {
        var show = Of(
                ("desk", SmallProfiles.Console),
                ("box", SmallProfiles.ClearableBox),
                ("rack", EarRig.Rack),
                ("phones", Headphones),
                ("amp", SmallProfiles.Amplifier)
            )
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"))
            .With(Route(null, "desk/transmit/3-4"));
        return show with
        {
            Rig = show.Rig with { Cables = cables.ToValueList() },
            Feeds =
            [
                Feed("wedge", FeedRole.Monitor, "desk/aux/1", "box/out/1"),
                Feed("drums", FeedRole.Monitor, "desk/aux/2", "box/out/2") with
                {
                    Limiter = false,
                },
            ],
        };
    }

    [Theory]
    [InlineData("rack/in/1")]
    [InlineData("phones/in/1")]
    public void A_mix_that_ends_in_ears_is_marked_on_its_whole_way_whatever_its_role_says(string end)
    {
        var sheet = SheetShow.Build(Make(Cable("box/out/2", end)));

        Assert.Contains(SheetMark.InEar, sheet.Output("box", 2).Marks);
        Assert.Contains(SheetMark.InEar, sheet.Input(end.Split('/')[0], 1).Marks);
        Assert.Contains(SheetMark.InEar, sheet.Bus("aux", 2).Marks);
        Assert.DoesNotContain(SheetMark.InEar, sheet.Output("box", 1).Marks);
        Assert.DoesNotContain(SheetMark.InEar, sheet.Bus("aux", 1).Marks);
        Assert.Contains(sheet.Device("box").Flows.SelectMany(flow => flow.Edges), edge => edge.IsInEar);
        Assert.Contains(sheet.Flows.SelectMany(flow => flow.Edges), edge => edge.IsInEar);
    }

    [Fact]
    public void Outputs_into_ears_that_nothing_is_said_of_stay_free() => Assert.True(SheetShow.Build(Make()).Output("phones", 3).IsFree);

    [Fact]
    public void A_mix_that_ends_in_ears_is_checked_first_heard_low_and_on_the_list_of_packs()
    {
        var sheet = SheetShow.Build(Make(Cable("box/out/2", "rack/in/1")));
        var row = sheet.OutputChecks[0];
        var text = TextSheetWriter.Write(sheet);

        Assert.Equal(("drums", true, false), (row.Id.Value, row.IsInEar, sheet.OutputChecks[1].IsInEar));
        Assert.Equal("A technician first, low; then the performer. NO LIMITER: set one first.", row.How);
        Assert.Equal("drums", Assert.Single(sheet.Packs).Id.Value);
        Assert.Contains("IN-EAR", text[text.IndexOf("Output check", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Each_cable_of_an_output_is_a_place_of_its_own_to_check(int first)
    {
        Cable[] cables = [Cable("box/out/2", "rack/in/1") with { Way = "loom 1" }, Cable("box/out/2", "amp/in/3")];
        var sheet = SheetShow.Build(Make(cables[first], cables[1 - first]));
        var arrives = sheet.OutputChecks[0].Places[0].Arrives;

        Assert.Equal(["box output 2 > rack input 1", "box output 2 > amp input 3"], arrives.Texts().OrderDescending(StringComparer.Ordinal));
        Assert.Equal(["loom 1", null], arrives.OrderByDescending(path => path.Way, StringComparer.Ordinal).Select(path => path.Way));
        Assert.Equal(["box output 2 > rack input 1", "box output 2 > amp input 3"], sheet.Packs[0].Outputs.Texts().OrderDescending(StringComparer.Ordinal));
    }
}
