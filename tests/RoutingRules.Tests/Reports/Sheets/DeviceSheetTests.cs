using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class DeviceSheetTests
{
    private static readonly Sheet Sheet = SheetShow.Build(SheetShow.Full);

    [Fact]
    public void An_output_says_what_it_carries_where_from_and_where_to()
    {
        var output = Sheet.Output("box-r", 1);

        Assert.Equal(["Main L"], output.Signal!.Names);
        Assert.Equal("MAIN LEFT", output.Label);
        Assert.Equal("Desk main 1", output.Signal.Source.ToString());
        var hop = Assert.Single(output.Hops);
        Assert.Equal((HopKind.Stream, "both", 1, "SR box receive 1"), (hop.Kind, hop.Id, hop.Channel, hop.At.ToString()));
        var end = Assert.Single(output.GoesTo);
        Assert.Equal(("Right amp input 1", "loom B, 1 of 2"), (end.At.ToString(), end.Way));
        Assert.Empty(output.Marks);
    }

    [Theory]
    [InlineData("box-r", "Main L,Main R,Subs,,,,,")]
    [InlineData("box-l", "Main L,Main R,Subs,,Ears L,Ears R,,")]
    [InlineData("amp", "Main L,Main R,,")]
    [InlineData("desk", "Main L,Main R")]
    public void Every_output_names_the_feed_it_carries_and_no_other(string device, string names)
    {
        var shown = Sheet.Device(device).Outputs.SelectMany(table => table.Rows).Select(row => row.Signal is null ? "" : string.Join('+', row.Signal.Names));

        Assert.Equal(names, string.Join(',', shown));
    }

    [Theory]
    [InlineData("box-l", 1, true)]
    [InlineData("box-r", 2, true)]
    [InlineData("desk", 1, true)]
    [InlineData("box-l", 2, false)]
    [InlineData("box-l", 3, false)]
    [InlineData("amp", 1, false)]
    public void An_output_that_no_feed_asks_for_is_marked(string device, int number, bool isNotAsked) =>
        Assert.Equal(isNotAsked, Sheet.Output(device, number).Marks.Contains(SheetMark.NotAsked));

    [Fact]
    public void In_ear_outputs_and_pinned_ones_are_marked() => Assert.Equal([SheetMark.InEar, SheetMark.Pinned], Sheet.Output("box-l", 5).Marks);

    [Fact]
    public void A_reserved_output_is_marked_with_the_reason_and_not_free()
    {
        var output = Sheet.Output("box-l", 8);

        Assert.Equal([SheetMark.Reserved], output.Marks);
        Assert.Equal("guest desk", output.Reason);
        Assert.False(output.IsFree);
    }

    [Fact]
    public void A_dead_input_is_marked_with_the_reason_and_not_free()
    {
        var input = Sheet.Input("box-r", 2);

        Assert.Equal([SheetMark.Dead], input.Marks);
        Assert.Equal("crackles", input.Reason);
        Assert.False(input.IsFree);
    }

    [Fact]
    public void Outputs_that_nothing_is_said_of_are_free() =>
        Assert.Equal([4, 5, 6, 7, 8], Sheet.Device("box-r").Outputs[0].Rows.Where(row => row.IsFree).Select(row => row.At.Number));

    [Fact]
    public void An_output_behind_an_input_without_a_plug_is_free() =>
        Assert.Equal([3, 4], Sheet.Device("amp").Outputs[0].Rows.Where(row => row.IsFree).Select(row => row.At.Number));

    [Fact]
    public void A_cabled_output_without_signal_says_so()
    {
        var show = SheetShow.Full with { Rig = SheetShow.Full.Rig with { Cables = [Cable("box-r/out/7", "amp/in/3")] } };

        Assert.Equal([SheetMark.NoSignal], SheetShow.Build(show).Output("box-r", 7).Marks);
    }

    [Fact]
    public void An_input_says_its_line_its_channels_and_who_sets_the_gain()
    {
        var input = Sheet.Input("box-r", 1);

        Assert.Equal(["Kick"], input.Lines.Select(line => line.Name));
        Assert.Equal("boundary microphone", input.Lines[0].Equipment);
        var end = Assert.Single(input.GoesTo);
        Assert.Equal(("Desk channel 1", "KICK"), (end.At.ToString(), end.Label));
        Assert.Equal(["Desk"], input.GainOwners);
    }

    [Theory]
    [InlineData("box-r", ",,Keys L,Keys R,,,,")]
    [InlineData("box-l", ",,,,,,,")]
    public void Every_line_stands_at_its_input_and_at_no_other(string device, string names)
    {
        var shown = Sheet.Device(device).Inputs[0].Rows.Select(row => string.Join('+', row.Lines.Select(line => line.Name)));

        Assert.Equal(device == "box-r" ? "Kick" + names : names, string.Join(',', shown));
    }

    [Fact]
    public void An_amplifier_input_says_what_to_plug_in()
    {
        var input = Sheet.Input("amp", 1);

        Assert.Equal(("SR box output 1", "loom B, 1 of 2"), (input.PluggedFrom!.At.ToString(), input.PluggedFrom.Way));
        Assert.Equal(["Main L"], input.Signal!.Names);
        Assert.Equal(["Right amp output 1"], input.GoesTo.Select(end => end.At.ToString()));
    }

    [Fact]
    public void A_free_input_with_phantom_switched_on_is_not_passed_over()
    {
        var show = SheetShow.Full with { Patch = SheetShow.Full.Patch with { Inputs = [new() { At = At("box-l/in/6"), Phantom = true }] } };

        var input = SheetShow.Build(show).Input("box-l", 6);

        Assert.False(input.IsFree);
        Assert.True(input.Phantom.IsOn);
    }

    [Fact]
    public void A_channel_says_where_its_line_enters()
    {
        var channel = Sheet.Channel("desk", 4);

        Assert.Equal(["Keys R"], channel.Signal!.Names);
        Assert.Equal(["SR box input 4"], channel.Enters.Select(place => place.ToString()));
    }

    [Fact]
    public void A_channel_whose_line_does_not_arrive_names_it()
    {
        var channel = Sheet.Channel("desk", 5);

        Assert.Equal(["Voice"], channel.Missing);
        Assert.Equal([SheetMark.NoSignal], channel.Marks);
    }

    [Fact]
    public void A_bus_shows_every_place_it_reaches()
    {
        Assert.Equal(["SR box output 3", "SL box output 3"], Sheet.Bus("aux", 1).Arrives.Texts());
        Assert.Equal(["Desk output 1", "SR box output 1 > Right amp input 1 > Right amp output 1", "SL box output 1"], Sheet.Bus("main", 1).Arrives.Texts());
        Assert.Equal(["SL box output 6"], Sheet.Bus("aux", 4).Arrives.Texts());
        Assert.Empty(Sheet.Bus("aux", 2).Arrives);
    }

    [Fact]
    public void Streams_are_listed_at_both_ends_with_what_they_carry()
    {
        var sent = Sheet.Device("desk").Sent[0];
        var received = Sheet.Device("box-l").Received;

        Assert.Equal(["Main L", "Main R", "Subs", null], sent.Contents.Select(slot => slot.Name));
        Assert.Equal(["SR box", "SL box"], sent.Receivers.Select(receiver => receiver.DeviceLabel));
        Assert.Equal(["both", "left"], received.Select(stream => stream.Id));
        Assert.Equal(["Ears L", "Ears R", null, null], received[1].Contents.Select(slot => slot.Name));
    }

    [Fact]
    public void Slots_without_a_stream_are_listed_as_free_runs() =>
        Assert.Equal(["box-r/transmit/5-8", "box-r/receive/5-8"], Sheet.Device("box-r").FreeSlots.Select(run => run.ToString()));

    [Fact]
    public void Panel_texts_stand_in_for_numbers_and_shared_connectors_are_counted()
    {
        var box = SmallProfiles.Box with
        {
            PortGroups = SmallProfiles
                .Box.PortGroups.Select(group =>
                    group.Id.Value switch
                    {
                        "in" => group with { PanelLabels = ["A", "B", "C", "D", "E", "F", "G", "H"] },
                        "out" => group with { ChannelsPerConnector = 2 },
                        _ => group,
                    }
                )
                .ToValueList(),
        };

        var sheet = SheetShow.Build(Of(("box", box)));

        Assert.Equal("box input C", sheet.Input("box", 3).At.ToString());
        Assert.Equal((2, 2), (sheet.Output("box", 4).At.Connector, sheet.Output("box", 4).At.ConnectorChannel));
    }

    [Fact]
    public void Phantom_behind_a_passive_split_is_that_of_the_box_that_supplies_it()
    {
        var split = new DeviceProfile
        {
            Id = new("test/split"),
            Kind = DeviceKind.Split,
            Name = "Test split",
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, 4),
                SmallProfiles.Group("direct", PortKind.Output, 4),
                SmallProfiles.Group("isolated", PortKind.Output, 4),
            ],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("direct"),
                    Phantom = true,
                },
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("isolated"),
                },
            ],
        };
        var show = Of(("split", split), ("box", SmallProfiles.Box));
        show = show with
        {
            Rig = show.Rig with { Cables = [Cable("split/direct/1", "box/in/1"), Cable("split/isolated/2", "box/in/2")] },
            Lines = [Line("a", "split/in/1", "desk/channel/1"), Line("b", "split/in/2", "desk/channel/2")],
            Patch = new Patch { Inputs = [new() { At = At("box/in/1-2"), Phantom = true }] },
        };

        var sheet = SheetShow.Build(show);

        Assert.True(sheet.Input("split", 1).Phantom is { IsOn: true, IsSupplied: true });
        Assert.True(sheet.Input("split", 2).Phantom is { IsOn: null, IsSupplied: false });
    }

    [Fact]
    public void A_device_without_a_profile_still_has_its_sheet()
    {
        var show = SheetShow.Full with { Rig = SheetShow.Full.Rig with { Profiles = [] } };

        var sheet = SheetShow.Build(show);

        Assert.Equal(4, sheet.Devices.Count);
        Assert.Empty(sheet.Devices[0].Outputs);
        Assert.Contains(sheet.Gaps, gap => gap.Subject == "SL box" && gap.Text.Contains("test/box", StringComparison.Ordinal));
    }
}
