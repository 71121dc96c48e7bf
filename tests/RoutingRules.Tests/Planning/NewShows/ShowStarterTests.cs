using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning.NewShows;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Planning.NewShows;

public sealed class ShowStarterTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static StarterOptions Usual { get; } =
        new()
        {
            Console = new("generic/console-small"),
            Boxes = [Small],
            Amplifier = new("generic/amplifier-4"),
            EarRack = new("generic/ear-rack-8"),
            Switch = new("generic/network-switch-10"),
            OtherConsoles = [new("generic/console-small"), new("generic/console-medium"), new("generic/console-large")],
            OtherBoxes = [new("generic/stage-box-small"), new("generic/stage-box-medium"), new("generic/stage-box-large")],
        };

    private static StarterBox Small => new() { Profile = new("generic/stage-box-small") };

    private static Show Start(StarterOptions options)
    {
        var result = ShowStarter.Start(Engine, options);
        Assert.Null(result.Shortage);
        Assert.Empty(result.Check!.Findings);
        return result.Show!;
    }

    private static StarterShortage Shortage(StarterOptions options)
    {
        var result = ShowStarter.Start(Engine, options);
        Assert.Null(result.Show);
        return result.Shortage!;
    }

    [Fact]
    public void The_usual_show_is_the_smallest_that_is_of_use()
    {
        var show = Start(Usual);

        Assert.Equal(["desk", "box", "amp"], show.Rig.Devices.Select(device => device.Id.Value));
        Assert.Equal("box/out/1-2 amp/in/1-2", string.Join(";", show.Rig.Cables.Select(cable => $"{cable.From} {cable.To}")));
        Assert.Equal(["main-l", "main-r", "mon-1", "mon-2"], show.Feeds.Select(feed => feed.Id.Value));
        Assert.Equal(["vocal-1 desk/channel/1", "direct-1 desk/channel/2", "stereo-1 desk/channel/3-4"], show.Lines.Select(line => $"{line.Id} {line.To[0]}"));
        Assert.Equal(
            ["box/in/1 False desk", "box/in/2 True desk", "box/in/3-4 False desk"],
            show.Patch.Inputs.Select(input => $"{input.At} {input.Phantom} {input.GainOwner}")
        );
        Assert.Contains(show.Patch.Labels, label => label.At.ToString() == "box/out/3" && label.Text == "MON 1");
    }

    [Fact]
    public void Sides_get_their_own_main_and_amplifier()
    {
        var show = Start(Usual with { Boxes = [Small, Small], Console = new("generic/console-medium"), Subs = 1 });

        // House left is the performers' right (common practice, no source).
        Assert.Equal("stage-right", show.Rig.Devices.Single(device => device.Id.Value == "box-right").Zone!.Value.Value);
        Assert.Equal(ZoneSide.HouseLeft, show.Rig.Zones.Single(zone => zone.Id.Value == "stage-right").Side);
        Assert.Equal("amp-right/in/1", show.Feeds[0].To[0].At.ToString());
        Assert.Equal("amp-left/in/1", show.Feeds[1].To[0].At.ToString());
        Assert.Contains(
            show.Rig.Cables,
            cable => cable.From.Device.Value == "box-left" && cable.To.ToString().StartsWith("amp-left/in/1", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_second_console_mixes_for_the_stage_and_hears_every_line()
    {
        var show = Start(
            Usual with
            {
                MonitorConsole = new("generic/console-medium"),
                InEars = 3,
                Boxes = [new() { Profile = new("generic/stage-box-large") }],
            }
        );

        Assert.All(
            show.Feeds.Where(feed => feed.Role == FeedRole.Monitor || feed.Role == FeedRole.InEar),
            feed => Assert.Equal("desk-m", feed.Source.Device.Value)
        );
        Assert.All(show.Lines, line => Assert.Equal(["desk", "desk-m"], line.To.Select(to => to.Device.Value)));
        Assert.All(show.Patch.Inputs, input => Assert.Equal("desk-m", Assert.Single(input.GainFollowers).Value));
        Assert.Equal(
            ["ears/in/1-2", "ears/in/3-4", "ears/in/5-6"],
            show.Feeds.Where(feed => feed.Role == FeedRole.InEar).Select(feed => feed.To[0].At.ToString())
        );
        Assert.Equal("desk-m/aux/3-4", show.Feeds.First(feed => feed.Role == FeedRole.InEar).Source.ToString());
        Assert.Contains(show.Rig.Devices, device => device.Id.Value == "switch");
    }

    [Fact]
    public void Packets_are_shortened_where_a_stage_box_sends_blocks_of_sixteen()
    {
        Assert.Equal(1000, Start(Usual).Rig.Networks[0].PacketMicroseconds);
        Assert.Equal(250, Start(Usual with { Boxes = [new() { Profile = new("generic/stage-box-large") }] }).Rig.Networks[0].PacketMicroseconds);
    }

    [Fact]
    public void A_ring_passes_every_device_once()
    {
        var show = Start(Usual with { Console = new("generic/console-medium"), Boxes = [Small, Small, Small], IsRedundant = true });

        Assert.Equal(4, show.Rig.Links.Count);
        Assert.Equal(LoopControl.SpanningTree, show.Rig.Networks[0].LoopControl);
        Assert.All(
            show.Rig.Links.SelectMany(link => new[] { link.From, link.To }).GroupBy(jack => jack.Device),
            jacks => Assert.Equal([1, 2], jacks.Select(jack => jack.First).Order())
        );
    }

    [Fact]
    public void Nothing_at_all_can_be_asked_for()
    {
        var show = Start(Usual with { Mains = 0, Monitors = 0, Vocals = 0, PhantomLines = 0, StereoLines = 0 });

        Assert.Empty(show.Feeds);
        Assert.Empty(show.Lines);
        Assert.Equal(["desk", "box"], show.Rig.Devices.Select(device => device.Id.Value));
    }

    [Fact]
    public void Too_many_monitors_for_the_outputs_are_counted_and_room_is_offered()
    {
        // 8 outputs, 2 of them for mains.
        var shortage = Shortage(Usual with { Monitors = 9 });

        Assert.Equal((StarterPart.Monitors, 9, 6), (shortage.Part, shortage.Asked, shortage.Fitting));
        Assert.Contains("8 outputs", shortage.Reason, StringComparison.Ordinal);
        Assert.Equal(
            ["BoxProfile generic/stage-box-large 1", "MoreBoxes generic/stage-box-small 2"],
            shortage.Room.Select(room =>
                FormattableString.Invariant($"{Assert.Single(room.Changes)} {room.Options.Boxes[0].Profile} {room.Options.Boxes.Count}")
            )
        );
    }

    [Fact]
    public void Too_many_monitors_for_the_buses_ask_for_another_console()
    {
        var shortage = Shortage(Usual with { Monitors = 12, Boxes = [new() { Profile = new("generic/stage-box-large") }] });

        Assert.Equal((StarterPart.Monitors, 10), (shortage.Part, shortage.Fitting));
        Assert.Equal("generic/console-medium", Assert.Single(shortage.Room).Options.Console.Value);
    }

    [Fact]
    public void A_ring_needs_two_jacks_everywhere()
    {
        var shortage = Shortage(Usual with { IsRedundant = true });

        Assert.Equal((StarterPart.Redundancy, 1, 0), (shortage.Part, shortage.Asked, shortage.Fitting));
        Assert.Equal("generic/console-medium", Assert.Single(shortage.Room).Options.Console.Value);
    }

    [Fact]
    public void What_none_can_hold_gets_no_false_hope()
    {
        var shortage = Shortage(Usual with { Monitors = 99 });

        Assert.Equal(6, shortage.Fitting);
        Assert.Empty(shortage.Room);
    }

    [Fact]
    public void Numbers_out_of_range_and_unknown_profiles_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ShowStarter.Start(Engine, Usual with { Monitors = -1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShowStarter.Start(Engine, Usual with { InEars = 100 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShowStarter.Start(Engine, Usual with { Mains = 4 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShowStarter.Start(Engine, Usual with { Boxes = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShowStarter.Start(Engine, Usual with { Title = "" }));
        Assert.Contains(
            "half a character",
            Assert.Throws<ArgumentException>(() => ShowStarter.Start(Engine, Usual with { Title = "a\ud800" })).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no profile 'house/none'",
            Assert.Throws<ArgumentException>(() => ShowStarter.Start(Engine, Usual with { Console = new("house/none") })).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no console",
            Assert.Throws<ArgumentException>(() => ShowStarter.Start(Engine, Usual with { Console = new("generic/stage-box-small") })).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no stage box",
            Assert
                .Throws<ArgumentException>(() => ShowStarter.Start(Engine, Usual with { Boxes = [new() { Profile = new("generic/console-small") }] }))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Equal_options_give_equal_bytes() =>
        Assert.Equal(ShowWriter.ToUtf8(Start(Usual with { InEars = 1 })), ShowWriter.ToUtf8(Start(Usual with { InEars = 1 })));
}
