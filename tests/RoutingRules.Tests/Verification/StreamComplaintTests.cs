using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class StreamComplaintTests
{
    private static readonly Scene Two = Scene.Paper(1);

    [Fact]
    public void Streams_have_different_names() => Two.WithStream("s2", stream => stream with { Id = new("s1") }).ComplainsOnly("Two streams are called s1.");

    [Fact]
    public void A_block_is_sent_once() =>
        Two.WithPatch(patch => patch with { Streams = [.. patch.Streams, Stream("s3", "desk/transmit/1-4")] })
            .Complains("s3 and s1 send the same block desk/transmit/1-4; one stream is enough.");

    [Fact]
    public void A_stream_without_a_demand_is_removed() =>
        Scene
            .Paper(3)
            .WithPatch(patch => patch with { Streams = [.. patch.Streams, Stream("s2", "desk/transmit/5-8")] })
            .ComplainsOnly("s2 carries no demand; remove it.");

    [Fact]
    public void Keep_in_the_result_alone_excuses_nothing() =>
        Scene
            .Paper(3)
            .WithPatch(patch => patch with { Streams = [.. patch.Streams, Stream("s2", "desk/transmit/5-8") with { Keep = true }] })
            .ComplainsOnly("s2 carries no demand; remove it.");

    [Fact]
    public void A_stream_is_sent_from_transmit_slots_to_receive_slots()
    {
        Two.WithStream("s2", stream => stream with { From = At("desk/aux/1-4") }).Complains("s2 is sent from desk/aux/1-4, which are no transmit slots.");
        Two.WithStream("s2", stream => stream with { To = [.. stream.To, new() { At = At("box-r/out/1-4") }] })
            .ComplainsOnly("s2 goes to box-r/out/1-4, which are no receive slots.");
    }

    [Theory]
    [InlineData("desk/transmit/4-7")]
    [InlineData("desk/transmit/5-6")]
    [InlineData("desk/transmit/1-8")]
    public void A_stream_is_one_whole_block(string from) =>
        Two.WithStream("s2", stream => stream with { From = At(from) }).Complains($"s2 must be one whole block of 4 transmit slots, and {from} is none.");

    [Fact]
    public void Slots_beyond_the_last_whole_block_are_no_block()
    {
        var ragged = Two.WithRig(rig =>
            rig with
            {
                Profiles = rig
                    .Profiles.Select(profile =>
                        profile.Kind == DeviceKind.Console
                            ? profile with
                            {
                                PortGroups = profile
                                    .PortGroups.Select(group => group.Kind == PortKind.Transmit ? group with { Count = 7 } : group)
                                    .ToValueList(),
                            }
                            : profile
                    )
                    .ToValueList(),
            }
        );

        ragged.Complains("s2 must be one whole block of 4 transmit slots, and desk/transmit/5-8 is none.");
    }

    [Theory]
    [InlineData("box-l/receive/1-3")]
    [InlineData("box-l/receive/2-4")]
    public void A_receiver_fills_whole_blocks(string at) =>
        Two.WithStream("s2", stream => stream with { To = [new() { At = At(at), Channels = new(1, 3) }] })
            .Complains($"s2 must fill whole blocks of 4 receive slots, and {at} does not.");

    [Fact]
    public void A_receiver_takes_whole_parts() =>
        Scene
            .Paper(19)
            .WithStream("s2", stream => stream with { To = [stream.To[0], stream.To[1] with { Channels = new(4, 7) }] })
            .Complains("s2 must give box-m/receive/1-4 whole parts of 4 channels, and channels 4-7 of 8 are none.");

    [Fact]
    public void An_excluded_device_receives_nothing_new() =>
        (Two with { Options = new AssignmentOptions { Without = ["box-l"] } })
            .LeaveOut("wedge-1/2")
            .Complains("s2 goes to box-l/receive/1-4, which must not be used.");

    [Fact]
    public void A_stream_uses_the_first_network_both_ends_have()
    {
        var networks = Two.WithRig(rig => rig with { Networks = [.. rig.Networks, rig.Networks[0] with { Id = new("net-b") }] }).IsValid();

        networks
            .WithStream("s2", stream => stream with { Network = new("net-b") })
            .ComplainsOnly("s2 uses the network net-b, but not as the first one that desk and box-l share.");
    }

    [Fact]
    public void Limits_of_streams_hold_with_the_headroom_asked_for()
    {
        var tight = Two with { Options = new AssignmentOptions { Headroom = 1 } };

        Assert.Equal(
            ["desk sends 2 streams where 1 are allowed.", "box-r takes 1 streams where 0 are allowed.", "box-l takes 1 streams where 0 are allowed."],
            tight.Verify().Problems
        );
    }

    [Fact]
    public void Streams_that_must_stay_may_fill_a_limit_alone()
    {
        // rec-b takes a kept stream and one for a demand: with headroom 1 of 2 only the kept one may stay.
        var kept = Scene.Paper(8) with
        {
            Options = new AssignmentOptions { Headroom = 1 },
        };

        Assert.Equal(["rec-b takes 2 streams where 1 are allowed."], kept.Verify().Problems);
    }

    [Fact]
    public void A_stream_has_a_way_to_its_receivers()
    {
        var linked = Linked(1000).IsValid();

        (linked with { Options = new AssignmentOptions { Without = ["l2"] } }).ComplainsOnly("s2 has no path over the network net to every receiver.");
    }

    // Four channels of 24 bit at 48 kHz in packets of 1 ms: 48 x 4 x 3 = 576 octets, 40 of IPv4, UDP and RTP (RFC 791, 768, 3550, from memory) and
    // 38 of Ethernet with preamble and gap (IEEE 802.1Q-2014, 34.4): 654 x 8 x 1000 = 5232 kbit/s. The first link carries two, 10 464 kbit/s.
    [Theory]
    [InlineData(14, true)] // three quarters of it: 10 500 kbit/s
    [InlineData(13, false)] // 9 750 kbit/s
    public void Streams_take_at_most_three_quarters_of_a_link(int speed, bool fits)
    {
        if (fits)
            Linked(speed).IsValid();
        else
            Linked(speed).ComplainsOnly($"The link l1 would carry 10464 kbit/s from desk to box-a, more than 75 % of its {speed} Mbit/s.");
    }

    // 10 464 kbit/s are 74.74 % of 14 Mbit/s.
    [Theory]
    [InlineData(75, true)]
    [InlineData(74.7, false)]
    public void The_share_of_a_link_is_an_option(double percent, bool fits)
    {
        var linked = Linked(14) with { Options = new AssignmentOptions { LinkPercent = percent } };

        if (fits)
            linked.IsValid();
        else
            linked.ComplainsOnly("The link l1 would carry 10464 kbit/s from desk to box-a, more than 74.7 % of its 14 Mbit/s.");
    }

    // Instance 22: two streams of class A with 2 channels are 14 592 kbit/s, three quarters of 10 Mbit/s are 7 500.
    [Fact]
    public void A_second_stream_overfills_a_link_that_holds_one() =>
        Scene
            .Paper(22)
            .IsValid()
            .Place("lobby/1", "far/out/2")
            .WithStreams(Stream("s1", "desk/transmit/1-2", "box/receive/1-2"), Stream("s2", "desk/transmit/3-4", "far/receive/1-2"))
            .WithRoutes(Route("desk/aux/1", "desk/transmit/3"), Route("desk/aux/2", "desk/transmit/4"))
            .ComplainsOnly("The link l1 would carry 14592 kbit/s from desk to box, more than 75 % of its 10 Mbit/s.");

    // Instance 23: what stays takes more than the share, and nothing may come on top.
    [Fact]
    public void Nothing_is_added_where_streams_that_stay_take_too_much() =>
        Scene
            .Paper(23)
            .IsValid()
            .LeaveOut("copy/1")
            .Place("talk/1", "box/out/1")
            .WithStream("r1", stream => stream with { To = [stream.To[0]] })
            .WithPatch(patch => patch with { Streams = [.. patch.Streams, Stream("s3", "desk/transmit/5-6", "box/receive/1-2")] })
            .WithRoutes(Route("desk/aux/1", "desk/transmit/5"))
            .ComplainsOnly("The link l1 would carry 21888 kbit/s from desk to box, more than 75 % of its 10 Mbit/s.");

    [Fact]
    public void Feeds_that_must_stay_apart_do_not_share_a_link() =>
        Linked(1000)
            .WithFeed("b", feed => feed with { SeparateFrom = [new() { Feed = new("a"), By = SeparationBy.Link }] })
            .ComplainsOnly("b/1 and a/1 share a link and must not.");

    // A box without any link is reached by no stream; the other receivers are.
    [Fact]
    public void A_receiver_that_the_stream_does_not_reach_keeps_no_link_apart()
    {
        var scene = Linked(1000)
            .WithFeed("b", feed => feed with { SeparateFrom = [new() { Feed = new("a"), By = SeparationBy.Link }] })
            .WithRig(rig => rig with { Devices = [.. rig.Devices, rig.Devices.First(device => device.Id.Value == "box-b") with { Id = new("far") }] });

        scene
            .WithStream("s1", stream => stream with { To = [.. stream.To, new() { At = At("far/receive/1-4") }] })
            .Complains("b/1 and a/1 share a link and must not.");
    }

    // A console, a box behind it and another box behind that.
    private static Scene Linked(int speed)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box-a", SmallProfiles.Box), ("box-b", SmallProfiles.Box)) with
        {
            Feeds = [FeedTo("a", FeedRole.Utility, "desk/aux/5", "box-a"), FeedTo("b", FeedRole.Utility, "desk/aux/6", "box-b")],
        };
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("l1"),
                        Network = new("net"),
                        From = At("desk/net/1"),
                        To = At("box-a/net/1"),
                        SpeedMbps = speed,
                    },
                    new()
                    {
                        Id = new("l2"),
                        Network = new("net"),
                        From = At("box-a/net/2"),
                        To = At("box-b/net/1"),
                        SpeedMbps = speed,
                    },
                ],
            },
        };
        var result = show.With(Stream("s1", "desk/transmit/1-4", "box-a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box-b/receive/1-4"))
            .With(Route("desk/aux/5", "desk/transmit/1"), Route(null, "desk/transmit/2-4"), Route("desk/aux/6", "desk/transmit/5"));
        return new Scene { Show = show, Result = result }
            .Place("a/1", "box-a/out/1")
            .Place("b/1", "box-b/out/1");
    }
}
