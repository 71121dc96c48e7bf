using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.External;

/// <summary>Block and channel arithmetic against tables worked out by hand. Source of every table: common practice, no source.</summary>
public sealed class BlockArithmeticTests
{
    private static DeviceProfile Device(int transmit, int transmitBlock, int receive, int receiveBlock) =>
        new()
        {
            Id = new("test/blocks"),
            Kind = DeviceKind.Processor,
            Name = "Blocks",
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, transmit),
                SmallProfiles.Group("transmit", PortKind.Transmit, transmit) with
                {
                    BlockSize = transmitBlock,
                },
                SmallProfiles.Group("receive", PortKind.Receive, receive) with
                {
                    BlockSize = receiveBlock,
                },
                SmallProfiles.Network(1),
            ],
            Routing = [SmallProfiles.Entry("in", "transmit", RoutingMode.Fixed)],
        };

    // Block b of size n covers slots (b-1)·n+1 to b·n.
    // 20 slots hold 20 blocks of 1, 10 of 2, 6 of 3 (19 and 20 are left over), 5 of 4 and 2 of 8 (17 to 20 are left over).
    [Theory]
    [InlineData(1, "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20")]
    [InlineData(2, "1-2 3-4 5-6 7-8 9-10 11-12 13-14 15-16 17-18 19-20")]
    [InlineData(3, "1-3 4-6 7-9 10-12 13-15 16-18")]
    [InlineData(4, "1-4 5-8 9-12 13-16 17-20")]
    [InlineData(8, "1-8 9-16")]
    public void Of_all_runs_of_twenty_slots_exactly_the_blocks_of_the_table_may_be_sent(int size, string blocks)
    {
        var show = Of(("a", Device(20, size, 20, size)));
        var accepted = new List<string>();
        for (var first = 1; first <= 20; first++)
        {
            for (var last = first; last <= 20; last++)
            {
                var run = new NumberRange(first, last).ToString();
                if (RuleTester.Findings(new StreamOffGrid(), show.With(Stream("s", $"a/transmit/{run}"))).IsEmpty)
                {
                    accepted.Add(run);
                }
            }
        }

        Assert.Equal(blocks.Split(' '), accepted);
    }

    // Stream channel c is transmit slot first+c-1: the stream 9-16 has channel 1 at slot 9 and channel 8 at slot 16.
    [Theory]
    [InlineData("1-8", 1, 1)]
    [InlineData("1-8", 8, 8)]
    [InlineData("9-16", 1, 9)]
    [InlineData("9-16", 5, 13)]
    [InlineData("9-16", 8, 16)]
    [InlineData("17-24", 2, 18)]
    public void A_stream_channel_is_the_slot_of_the_table(string from, int channel, int slot)
    {
        var show = Of(("a", Device(24, 8, 24, 1)), ("b", Device(24, 8, 24, 1)));
        var stream = Stream("s", $"a/transmit/{from}") with { To = [new() { At = At("b/receive/3"), Channels = new(channel, channel) }] };

        Assert.Equal($"a/transmit/{slot}", Upstream(show.With(stream), "b/receive/3"));
    }

    // A receiver that takes channels a..b has channel c at receive slot first+(c-a). Sent 9-16: channel 5 is slot 13.
    [Theory]
    [InlineData("1-4", "b/receive/1-4", "9 10 11 12")]
    [InlineData("5-8", "b/receive/1-4", "13 14 15 16")]
    [InlineData("5-8", "b/receive/9-12", "13 14 15 16")]
    [InlineData("1-8", "b/receive/17-24", "9 10 11 12 13 14 15 16")]
    [InlineData("3-4", "b/receive/6-7", "11 12")]
    public void A_receiver_of_some_channels_has_the_slots_of_the_table(string channels, string at, string slots)
    {
        var show = Of(("a", Device(24, 8, 24, 4)), ("b", Device(24, 8, 24, 4)));
        Assert.True(NumberRange.TryParse(channels, out var taken, out _));
        var stream = Stream("s", "a/transmit/9-16") with { To = [new() { At = At(at), Channels = taken }] };

        var fed = Enumerable.Range(0, At(at).Width).Select(position => Upstream(show.With(stream), At(at)[position].ToString()));

        Assert.Equal(slots.Split(' ').Select(slot => $"a/transmit/{slot}"), fed);
    }

    // Receivers with blocks of 4 take channels 1-4 and 5-8 of a stream of 8, or both; nothing that starts at another channel.
    [Fact]
    public void Of_all_runs_of_channels_exactly_whole_blocks_may_be_received()
    {
        var show = Of(("a", Device(24, 8, 24, 4)), ("b", Device(24, 8, 24, 4)));
        var accepted = new List<string>();
        for (var first = 1; first <= 8; first++)
        {
            for (var last = first; last <= 8; last++)
            {
                var receiver = new StreamReceiver { At = At($"b/receive/9-{9 + last - first}"), Channels = new(first, last) };
                if (RuleTester.Findings(new StreamOffGrid(), show.With(Stream("s", "a/transmit/1-8") with { To = [receiver] })).IsEmpty)
                {
                    accepted.Add($"{first}-{last}");
                }
            }
        }

        Assert.Equal(["1-4", "1-8", "5-8"], accepted);
    }

    // A stream of 8 can be taken in blocks of 1, 2, 4 and 8 only.
    [Fact]
    public void A_stream_of_eight_fits_receivers_whose_blocks_divide_eight()
    {
        var fitting = Enumerable
            .Range(1, 12)
            .Where(size =>
                RuleTester
                    .Findings(
                        new ReceiverWidthMismatch(),
                        Of(("a", Device(24, 8, 24, size)), ("b", Device(24, 8, 24, size))).With(Stream("s", "a/transmit/1-8", "b/receive/1-8"))
                    )
                    .IsEmpty
            );

        Assert.Equal([1, 2, 4, 8], fitting);
    }

    private static string Upstream(Show show, string address)
    {
        var graph = ShowResolver.Resolve(show, new ProfileLibrary([])).Graph;
        Assert.Equal(ConnectionState.Connected, graph.Find(At(address), out var point));
        return graph.Address(graph.Upstream(point)).ToString();
    }
}
