using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class GapTests
{
    [Fact]
    public void What_is_not_delivered_is_named_with_the_place_that_waits_for_it()
    {
        var gaps = SheetShow.Build(SheetShow.Full).Gaps;

        Assert.Equal(
            [
                new SheetGap { Subject = "Wedge", Text = "Desk aux 2 does not arrive at SL box. Patch it there." },
                new SheetGap { Subject = "Voice", Text = "It has no input yet; wanted at zone Fiddle corner (house right). Its channels: Desk channel 5." },
            ],
            gaps
        );
    }

    [Fact]
    public void One_missing_destination_of_a_fan_out_is_named()
    {
        var show = SheetShow.Full with
        {
            Patch = SheetShow.Full.Patch with { Streams = [Stream("both", "desk/transmit/1-4", "box-r/receive/1-4")] },
            Lines = [],
        };

        var gap = SheetShow.Build(show).Gaps.Single(gap => gap.Subject.StartsWith("Subs", StringComparison.Ordinal));

        Assert.Equal(("Subs (2 of 2)", "Desk aux 1 does not arrive at SL box. Patch it there."), (gap.Subject, gap.Text));
    }

    [Theory]
    [InlineData("desk/aux/4", "desk/aux/3", "arrives with left and right swapped")]
    [InlineData("desk/aux/3", null, "arrives left only")]
    [InlineData(null, "desk/aux/4", "arrives right only")]
    [InlineData(null, null, "does not arrive")]
    public void A_pair_that_arrives_wrong_says_how(string? left, string? right, string state)
    {
        var show = SheetShow.Full with { Patch = SheetShow.Full.Patch with { Routes = [Route(left, "desk/transmit/5"), Route(right, "desk/transmit/6")] } };

        var gap = SheetShow.Build(show).Gaps.Single(gap => gap.Subject == "Ears");

        Assert.Equal($"Desk aux 3-4 {state} at SL box output 5-6. Patch it there.", gap.Text);
    }

    [Fact]
    public void A_line_that_misses_one_console_names_the_channel()
    {
        var show = SheetShow.Full with { Lines = [Line("kick", "box-r/in/1", "desk/channel/1", "desk/channel/7")], Feeds = [] };

        var gap = Assert.Single(SheetShow.Build(show).Gaps);

        Assert.Equal(("kick", "SR box input 1 does not arrive at Desk channel 7. Route it there."), (gap.Subject, gap.Text));
    }

    [Fact]
    public void A_feed_or_line_on_a_dead_or_reserved_point_is_named()
    {
        var show = SheetShow.Full with
        {
            Rig = SheetShow.Full.Rig with
            {
                Unavailable = [new() { At = At("box-r/in/1"), Reason = "bent pin" }],
                Reserved = [new() { At = At("box-l/out/6") }],
            },
        };

        var gaps = SheetShow.Build(show).Gaps;

        Assert.Contains(new SheetGap { Subject = "Kick", Text = "It enters at SR box input 1, which is DEAD (bent pin). Move it." }, gaps);
        Assert.Contains(new SheetGap { Subject = "Ears", Text = "It arrives at SL box output 6, which is RESERVED. Move it." }, gaps);
    }

    [Fact]
    public void What_is_written_without_effect_is_named()
    {
        var full = SheetShow.Full;
        var show = full with
        {
            Feeds = [Feed("lost", FeedRole.Monitor, "desk/aux/99"), .. full.Feeds],
            Rig = full.Rig with
            {
                Cables = [.. full.Rig.Cables, Cable("box-r/out/1", "amp/in/1"), Cable("box-r/out/3-4", "amp/in/4")],
                Unavailable = [new() { At = At("box-r/in/9") }],
            },
            Patch = full.Patch with
            {
                Routes = [.. full.Patch.Routes, Route("desk/aux/1", "desk/transmit/9"), Route("box-l/receive/1", "box-l/out/2")],
                Labels = [new() { At = At("desk/fader/1"), Text = "X" }],
            },
        };

        var texts = SheetShow.Build(show).Gaps.Select(gap => $"{gap.Subject}: {gap.Text}").ToArray();

        Assert.Contains("lost: Its bus desk/aux/99 is not in the rig: correct the address of the bus.", texts);
        Assert.Contains("lost: It names no destination: say where it shall go.", texts);
        Assert.Contains("Right amp input 1: Claimed twice: the cable from SR box output 1-2 counts, the cable from SR box output 1 does not. Keep one.", texts);
        Assert.Contains("Cable SR box output 3-4 to Right amp input 4: Written but without effect: its two ends are not equally wide.", texts);
        Assert.Contains("Dead points: box-r/in/9 is not in the rig: correct the address.", texts);
        Assert.Contains("Route Desk aux 1 to desk/transmit/9: Written but without effect: it names a number beyond the last one of its group.", texts);
        Assert.Contains("Route SL box receive 1 to SL box output 2: No effect at SL box output 2: the device fixes what this point takes.", texts);
        Assert.Contains("Label \u201cX\u201d: desk/fader/1 is not in the rig: correct the address.", texts);
    }

    [Fact]
    public void A_stream_that_no_network_cable_carries_is_named()
    {
        var full = SheetShow.Full;
        var show = full with
        {
            Rig = full.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("trunk"),
                        Network = new("net"),
                        From = At("desk/net/1"),
                        To = At("box-r/net/1"),
                    },
                ],
            },
        };

        var gaps = SheetShow.Build(show).Gaps.Where(gap => gap.Subject.StartsWith("Stream", StringComparison.Ordinal)).Select(gap => gap.Subject);

        Assert.Equal(["Stream both", "Stream left"], gaps);
    }

    [Fact]
    public void A_complete_show_has_no_gaps()
    {
        var show = SheetShow.Full with
        {
            Feeds = SheetShow.Full.Feeds.Where(feed => feed.Id.Value != "wedge").ToValueList(),
            Lines = SheetShow.Full.Lines.Where(line => line.Id.Value != "voice").ToValueList(),
        };

        Assert.Empty(SheetShow.Build(show).Gaps);
    }
}
