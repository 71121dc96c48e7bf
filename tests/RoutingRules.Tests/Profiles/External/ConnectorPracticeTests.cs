using RoutingRules.Profiles;

namespace RoutingRules.Tests.Profiles.External;

/// <summary>The generic profiles against what connectors and levels are in the trade and in standards.</summary>
public class ConnectorPracticeTests
{
    // Common practice, no source: signal enters at sockets and leaves at pins.
    [Fact]
    public void Three_pin_inputs_are_sockets_and_three_pin_outputs_are_pins()
    {
        Assert.All(ProfilePack.Groups(PortKind.Input), entry => Assert.NotEqual(Connector.XlrPins, entry.Group.Connector));
        Assert.All(ProfilePack.Groups(PortKind.Output), entry => Assert.NotEqual(Connector.XlrSocket, entry.Group.Connector));
        Assert.Contains(ProfilePack.Groups(PortKind.Input), entry => entry.Group.Connector == Connector.XlrSocket);
        Assert.Contains(ProfilePack.Groups(PortKind.Output), entry => entry.Group.Connector == Connector.XlrPins);
    }

    // IEC 61938, from memory: phantom power is a supply for microphones over a balanced microphone input.
    [Fact]
    public void Only_microphone_inputs_supply_phantom_power()
    {
        var supplies = ProfilePack.All.SelectMany(profile => profile.PortGroups).Where(group => group.Phantom).ToArray();

        Assert.NotEmpty(supplies);
        Assert.All(supplies, group => Assert.Equal((PortKind.Input, SignalLevel.Mic), (group.Kind, group.Level)));
    }

    // Common practice, no source: a transformer does not pass phantom power, a straight wire does.
    [Fact]
    public void Phantom_power_passes_a_split_on_its_direct_side_only()
    {
        var split = ProfilePack.Get("generic/passive-split-24");

        Assert.Equal(2, split.Through.Count);
        Assert.All(split.Through, path => Assert.Equal(!split.PortGroups.Single(group => group.Id == path.To).Isolated, path.Phantom));
    }

    // AES3, from memory: two channels share one connector, so they are a pair in hardware.
    [Fact]
    public void Digital_pairs_share_a_connector()
    {
        var pairs = ProfilePack.All.SelectMany(profile => profile.PortGroups).Where(group => group.Level == SignalLevel.Aes3).ToArray();

        Assert.NotEmpty(pairs);
        Assert.All(pairs, group => Assert.Equal((2, true, 0), (group.ChannelsPerConnector, group.Paired, group.Count % 2)));
    }

    // Common practice, no source: loudspeaker level leaves on its own connector, so that nobody plugs it into a line input.
    [Fact]
    public void Loudspeaker_level_and_loudspeaker_connectors_go_together()
    {
        var groups = ProfilePack.All.SelectMany(profile => profile.PortGroups).ToArray();

        Assert.Contains(groups, group => group.Level == SignalLevel.Speaker);
        Assert.All(groups, group => Assert.Equal(group.Level == SignalLevel.Speaker, group.Connector == Connector.Speaker));
        Assert.All(groups.Where(group => group.Level == SignalLevel.Speaker), group => Assert.Equal(PortKind.Output, group.Kind));
    }

    // Common practice, no source: a console or stage box gives out line level.
    [Fact]
    public void Stage_boxes_and_consoles_have_line_outputs_and_microphone_inputs()
    {
        foreach (var profile in ProfilePack.All.Where(profile => profile.Kind == DeviceKind.StageBox || profile.Kind == DeviceKind.Console))
        {
            Assert.Contains(profile.PortGroups, group => group is { Kind: PortKind.Output, Level: { } level } && level == SignalLevel.Line);
            Assert.Contains(profile.PortGroups, group => group is { Kind: PortKind.Input, Level: { } level, Phantom: true } && level == SignalLevel.Mic);
        }
    }

    // Common practice, no source: a stereo pack takes two line inputs, left first.
    [Fact]
    public void An_ear_rack_takes_a_left_and_a_right_input_for_each_pack()
    {
        var rack = ProfilePack.Get("generic/ear-rack-8").PortGroups.Single();

        Assert.True(rack.Paired);
        Assert.Equal(16, rack.Count);
        for (var pack = 1; pack <= 8; pack++)
        {
            Assert.Equal([$"{pack}L", $"{pack}R"], rack.PanelLabels.Skip((2 * pack) - 2).Take(2));
        }
    }
}
