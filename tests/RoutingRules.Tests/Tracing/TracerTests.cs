using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Profiles;
using RoutingRules.Tracing;
using static RoutingRules.Tests.Tracing.TracerShows;

namespace RoutingRules.Tests.Tracing;

public sealed class TracerTests
{
    [Fact]
    public void A_bus_is_followed_to_every_place_it_reaches()
    {
        var trace = Trace(Club(), "desk/aux/1");

        Assert.Empty(trace.Upstream);
        Assert.Equal(TraceStart.Source, trace.Start);
        Assert.True(trace.HasSource);
        Assert.Equal(
            [
                "desk/aux/1 Factory desk/transmit/1",
                "desk/transmit/1 Stream box-a/receive/5",
                "box-a/receive/5 Fixed box-a/out/5",
                "box-a/out/5 Cable amp/in/2",
                "amp/in/2 Through amp/out/2",
                "desk/transmit/1 Stream box-b/receive/1",
                "box-b/receive/1 Fixed box-b/out/1",
            ],
            Steps(trace.Downstream.Select(branch => branch.Hop))
        );
        Assert.Equal([1, 2, 3, 4, 5, 2, 3], trace.Downstream.Select(branch => branch.Depth));
        Assert.Equal([false, false, false, false, true, false, true], trace.Downstream.Select(branch => branch.IsEnd));
    }

    [Fact]
    public void A_loudspeaker_output_is_followed_back_in_the_direction_of_the_signal()
    {
        var trace = Trace(Club(), "amp/out/2");

        Assert.Equal(
            [
                "desk/aux/1 Factory desk/transmit/1",
                "desk/transmit/1 Stream box-a/receive/5",
                "box-a/receive/5 Fixed box-a/out/5",
                "box-a/out/5 Cable amp/in/2",
                "amp/in/2 Through amp/out/2",
            ],
            Steps(trace.Upstream)
        );
        Assert.Equal("desk/aux/1", trace.StartAt.At.ToString());
        Assert.Empty(trace.Downstream);
    }

    [Fact]
    public void A_stream_step_tells_channel_blocks_and_packet_time()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));
        var stream = SmallShow.Stream("s1", "desk/transmit/5-8") with { To = [new() { At = SmallShow.At("box/receive/5-8"), Channels = new(1, 4) }] };
        var hop = Assert.Single(
            Trace(show.With(stream).With(SmallShow.Route("desk/aux/3", "desk/transmit/7")), "box/receive/7").Upstream,
            hop => hop.Kind == HopKind.Stream
        );

        // Slot 7 is the third of slots 5 to 8; blocks of four: slots 5 to 8 are the second block at both ends; the network says 1000 microseconds.
        Assert.Equal(("s1", 0, 3, 2, 2, 1.0), (hop.Id, hop.Index, hop.StreamChannel, hop.TransmitBlock, hop.ReceiveBlock, hop.LatencyMilliseconds));
        Assert.True(hop.IsReachable);
        Assert.Empty(hop.Links);
    }

    [Fact]
    public void A_stream_step_names_the_links_from_sender_to_receiver()
    {
        var show = Club();
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("second"),
                        Network = new("net"),
                        From = SmallShow.At("box-b/net/1"),
                        To = SmallShow.At("box-a/net/2"),
                    },
                    new()
                    {
                        Id = new("first"),
                        Network = new("net"),
                        From = SmallShow.At("desk/net/1"),
                        To = SmallShow.At("box-a/net/1"),
                    },
                ],
            },
        };

        var hop = Trace(show, "box-b/out/1").Upstream[1];
        Assert.Equal(["first", "second"], hop.Links.Select(link => link.Value));
        Assert.Equal(["first"], Trace(show, "box-a/out/5").Upstream[1].Links.Select(link => link.Value));
    }

    [Fact]
    public void A_stream_between_devices_that_no_link_joins_is_not_reachable()
    {
        var show = Club();
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("only"),
                        Network = new("net"),
                        From = SmallShow.At("desk/net/1"),
                        To = SmallShow.At("box-a/net/1"),
                    },
                ],
            },
        };

        Assert.False(Trace(show, "box-b/out/1").Upstream[1].IsReachable);
        Assert.True(Trace(show, "box-a/out/5").Upstream[1].IsReachable);
    }

    [Fact]
    public void Latencies_of_groups_paths_and_packets_are_added_once_each()
    {
        var show = Club();
        var profiles = show.Rig.Profiles.Select(profile =>
            profile.Id.Value switch
            {
                "test/console" => profile with
                {
                    LatencyMilliseconds = [new() { Group = new("aux"), Value = 0.1 }, new() { Group = new("transmit"), Value = 0.2 }],
                },
                "test/box" => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 0.5 }] },
                "test/amplifier" => profile with { Through = [profile.Through[0] with { LatencyMilliseconds = 4 }] },
                _ => profile,
            }
        );
        show = show with { Rig = show.Rig with { Profiles = profiles.ToValueList() } };

        // Aux 0.1, transmit slot 0.2, packet 1, box output 0.5, amplifier 4: 5.8 in all.
        Assert.Equal(5.8, Trace(show, "amp/out/2").KnownLatencyMilliseconds!.Value, 9);
        Assert.Equal(0.3, Trace(show, "desk/transmit/1").KnownLatencyMilliseconds!.Value, 9);
        Assert.Null(Trace(show, "amp/in/1").KnownLatencyMilliseconds);
    }

    [Fact]
    public void A_packet_time_that_is_not_written_is_the_usual_one_of_the_transport()
    {
        // AES67, clause 7.2: 1 ms. IEEE 802.1Q, measurement intervals of the stream reservation classes: 125 and 250 microseconds. From memory.
        foreach (
            var (transport, expected) in new (Transport, double?)[]
            {
                (Transport.RtpL24, 1),
                (Transport.RtpL16, 1),
                (Transport.AvtpClassA, 0.125),
                (Transport.AvtpClassB, 0.25),
                (Transport.PointToPoint, null),
                (new("other"), null),
            }
        )
        {
            var show = Club();
            show = show with { Rig = show.Rig with { Networks = [show.Rig.Networks[0] with { Transport = transport, PacketMicroseconds = null }] } };
            Assert.Equal(expected, Trace(show, "box-b/out/1").Upstream[1].LatencyMilliseconds);
        }
    }

    [Fact]
    public void Labels_and_marks_stand_at_their_points()
    {
        var show = Club();
        show = show with
        {
            Rig = show.Rig with
            {
                Unavailable = [new() { At = SmallShow.At("box-a/out/5"), Reason = "crackles" }],
                Reserved = [new() { At = SmallShow.At("box-b/out/1-2") }],
            },
            Patch = show.Patch with { Labels = [new() { At = SmallShow.At("desk/aux/1-2"), Text = "MON" }] },
        };
        var trace = Trace(show, "desk/aux/1");

        Assert.Equal("MON", trace.At.Label);
        var dead = trace.Downstream[2].Hop.To;
        Assert.Equal((true, false, "crackles", null), (dead.IsDead, dead.IsReserved, dead.MarkReason, dead.Label));
        Assert.Equal((false, true), (trace.Downstream[6].Hop.To.IsDead, trace.Downstream[6].Hop.To.IsReserved));
        Assert.Equal("loom 5", trace.Downstream[3].Hop.Way);
    }

    [Fact]
    public void A_multicore_step_names_its_link()
    {
        var text = """
            { "schemaVersion": 1, "title": "T", "rig": {
              "networks": [ { "id": "mc", "transport": "point-to-point" } ],
              "devices": [ { "id": "a", "profile": "generic/multicore-box" }, { "id": "b", "profile": "generic/console-large" } ],
              "links": [ { "id": "snake", "network": "mc", "from": "a/A/1", "to": "b/B/1" } ] } }
            """;
        var box = ProfilePack.Get("generic/multicore-box");
        var desk = ProfilePack.Get("generic/console-large");
        var jackA = box.PortGroups.First(group => group.Kind == PortKind.Transmit && group.Carrier is not null).Carrier!.Value;
        var receive = desk.PortGroups.First(group => group.Kind == PortKind.Receive && group.Carrier is not null);
        text = text.Replace("a/A/1", $"a/{jackA.Group}/{jackA.First}", StringComparison.Ordinal)
            .Replace("b/B/1", $"b/{receive.Carrier!.Value.Group}/{receive.Carrier.Value.First}", StringComparison.Ordinal);
        var show = ShowReader.Read(System.Text.Encoding.UTF8.GetBytes(text));
        Assert.True(show.IsUsable);
        var hop = Trace(show.Value!, $"b/{receive.Id}/1").Upstream[^1];

        Assert.Equal((HopKind.Carrier, "snake"), (hop.Kind, hop.Id));
        Assert.Null(hop.StreamChannel);
    }

    [Fact]
    public void Every_point_of_the_examples_agrees_with_the_graph()
    {
        foreach (var path in Directory.GetFiles(Repository.At("schema", "examples"), "*.show.json").Order(StringComparer.Ordinal))
        {
            var show = TestEngine.Resolve(ShowReader.ReadFile(path).Value!);

            // Every seventh point: all of them take long and show nothing else.
            for (var i = 0; i < show.Graph.PointCount; i += 7)
            {
                var at = new PointIndex(i);
                var trace = RoutingEngine.Trace(show, at);
                var origin = show.Graph.Origin(at);

                Assert.Equal(!origin.IsNone, trace.HasSource);
                Assert.Equal(show.Graph.IsLooping(at), trace.Start == TraceStart.Loop);
                if (trace.HasSource)
                {
                    Assert.Equal(show.Graph.Address(origin), trace.StartAt.At);
                }

                for (var hop = 1; hop < trace.Upstream.Count; hop++)
                {
                    Assert.Equal(trace.Upstream[hop - 1].To, trace.Upstream[hop].From);
                }

                Assert.Equal(
                    show.Graph.Carrying(at).Select(point => show.Graph.Address(point).ToString()).Order(StringComparer.Ordinal),
                    trace.Downstream.Select(branch => branch.Hop.To.At.ToString()).Order(StringComparer.Ordinal)
                );
            }
        }
    }
}
