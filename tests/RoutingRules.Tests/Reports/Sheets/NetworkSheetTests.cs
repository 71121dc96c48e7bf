using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class NetworkSheetTests
{
    private static readonly Sheet Sheet = SheetShow.Build(Chain());

    // AES67-2013, 7.1 and 7.2 (from memory): 48 samples of 3 octets a channel in 1 ms; RFC 3550, 768, 791: 12 + 8 + 20 octets before them;
    // IEEE 802.3: 14 + 4 octets of frame, 8 of preamble, 12 of gap. For 4 channels 576 + 40 + 38 = 654 octets 1000 times a second.
    [Fact]
    public void The_rate_of_a_stream_is_that_of_its_packets_on_the_wire() =>
        Assert.Equal([654 * 8 * 1000.0, 654 * 8 * 1000.0], Sheet.Networks[0].Streams.Select(stream => stream.BitsPerSecond!.Value));

    [Fact]
    public void A_stream_to_two_boxes_loads_the_common_link_once_and_each_link_in_its_direction_only()
    {
        var links = Sheet.Networks[0].Links;

        Assert.Equal([5_232_000.0, 5_232_000.0], links.Select(link => link.Forward));
        Assert.Equal([5_232_000.0, 0.0], links.Select(link => link.Backward));
        Assert.Equal([1e9, 1e8], links.Select(link => link.Speed!.Value));
    }

    [Fact]
    public void Clock_leader_backup_and_packet_time_stand_at_the_top()
    {
        var network = Sheet.Networks[0];

        Assert.Equal(("c1", 48000, "desk", "near", 1.0), (network.Clock, network.SampleRate, network.Leader, network.Backup, network.PacketMilliseconds));
        Assert.Contains("clock c1 \u00b7 48000 Hz \u00b7 leader desk \u00b7 backup near", TextSheetWriter.Write(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stream_counts_the_channels_that_carry_something() =>
        Assert.Equal([(2, 4), (0, 4)], Sheet.Networks[0].Streams.Select(stream => (stream.Used, stream.Channels)));

    [Fact]
    public void Latency_is_what_the_devices_and_the_packets_state_added_up()
    {
        var latency = Assert.Single(Sheet.Latencies);

        // Two feeds to a box: 1 ms of packet time, 0.5 ms at the output.
        Assert.Equal(("monitor", 2, 1.5, 1.5), (latency.What, latency.Count, latency.Shortest, latency.Longest));
        Assert.Equal("a at near output 1", latency.ShortestAt);
    }

    [Theory]
    [InlineData(0, "[.........|..]")]
    [InlineData(0.5, "[######...|..]")]
    [InlineData(1, "[############]")]
    public void A_bar_is_filled_by_its_share_and_has_a_stroke_at_three_quarters(double share, string expected) =>
        Assert.Equal(expected, TextTable.Bar(new PageLine("", PageLineStyle.Bar) { Share = share, Limit = 0.75 }));

    [Fact]
    public void A_link_that_carries_too_much_says_so()
    {
        var show = Chain();
        var slow = show with { Rig = show.Rig with { Links = [show.Rig.Links[0] with { SpeedMbps = 6 }, show.Rig.Links[1]] } };

        Assert.Contains("<TOO MUCH>", TextSheetWriter.Write(SheetShow.Build(slow)), StringComparison.Ordinal);
        Assert.DoesNotContain("<TOO MUCH>", TextSheetWriter.Write(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_selection_keeps_the_streams_and_links_of_its_devices()
    {
        var sheet = SheetShow.Build(Chain(), new SheetOptions { Devices = [new("far")] });

        Assert.Equal((1, 1), (sheet.Networks[0].Streams.Count, sheet.Networks[0].Links.Count));
    }

    /// <summary>A console, a near box and a far box behind it; one stream to both, one back from the near box.</summary>
    private static Show Chain()
    {
        var box = SmallProfiles.Box with { LatencyMilliseconds = [new() { Group = new("out"), Value = 0.5 }] };
        var show = Of(("desk", SmallProfiles.Console), ("near", box), ("far", box));
        return show with
        {
            Rig = show.Rig with
            {
                Clocks =
                [
                    new()
                    {
                        Id = new("c1"),
                        SampleRate = 48000,
                        Leader = new("desk"),
                        Backup = new("near"),
                    },
                ],
                Networks =
                [
                    new()
                    {
                        Id = new("net"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                        Clock = new("c1"),
                    },
                ],
                Links =
                [
                    new()
                    {
                        Id = new("trunk"),
                        Network = new("net"),
                        From = At("desk/net/1"),
                        To = At("near/net/1"),
                        SpeedMbps = 1000,
                    },
                    new()
                    {
                        Id = new("on"),
                        Network = new("net"),
                        From = At("near/net/2"),
                        To = At("far/net/1"),
                        SpeedMbps = 100,
                    },
                ],
            },
            Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "near/out/1"), Feed("b", FeedRole.Monitor, "desk/aux/2", "far/out/2")],
            Patch = new Patch
            {
                Streams = [Stream("out", "desk/transmit/1-4", "near/receive/1-4", "far/receive/1-4"), Stream("back", "near/transmit/1-4", "desk/receive/1-4")],
                Routes = [Route(null, "desk/transmit/3-4")],
            },
        };
    }
}
