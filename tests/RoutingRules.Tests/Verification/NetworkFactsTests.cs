using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Verification;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class NetworkFactsTests
{
    // On the wire: 42 octets of tagged or 38 of untagged Ethernet with preamble and gap (IEEE 802.1Q-2014, 34.4, as the tc-cbs manual page cites it),
    // 24 of IEEE 1722-2016 clause 7, or 40 of IPv4, UDP and RTP (RFC 791, 768, 3550, from memory); 48 kHz; 4 octets a sample in IEEE 1722, 3 in L24.
    [Theory]
    [InlineData("avtp-class-a", 8, 16_512)] // (6 x 8 x 4 + 24 + 42) x 8 x 8000
    [InlineData("avtp-class-b", 8, 14_400)] // (12 x 8 x 4 + 24 + 42) x 8 x 4000
    [InlineData("rtp-l24", 8, 9_840)] // (48 x 8 x 3 + 40 + 38) x 8 x 1000
    [InlineData("rtp-l16", 8, 6_768)] // (48 x 8 x 2 + 40 + 38) x 8 x 1000
    [InlineData("avtp-class-a", 1, 5_760)] // (6 x 1 x 4 + 24 + 42) x 8 x 8000
    [InlineData("point-to-point", 8, 12_288)] // 8 x 32 x 48000, AES10 carries 32 bits a channel and sample
    public void A_stream_takes_its_octets_on_the_wire(string transport, int channels, int kilobits)
    {
        var show = Of(("desk", SmallProfiles.Console));
        var network = show.Rig.Networks[0] with { Transport = new(transport), PacketMicroseconds = null };

        Assert.Equal(kilobits * 1000L, new NetworkFacts(new RigFacts(show, _ => null, [])).BitsPerSecond(network, channels));
    }

    // As many samples in a packet at 44.1 kHz as at 48 (AES67-2023, 7.2, as open code cites it): (48 x 8 x 3 + 78) x 8 x 44100 / 48 = 9 040 500.
    [Theory]
    [InlineData(1000, 9_040_500)]
    [InlineData(1088, 9_040_500)]
    [InlineData(125, 13_053_600)] // (6 x 8 x 3 + 78) x 8 x 44100 / 6
    public void Packets_at_44_kilohertz_hold_as_many_samples_as_at_48(int microseconds, long bits)
    {
        var show = Of(("desk", SmallProfiles.Console));
        show = show with
        {
            Rig = show.Rig with
            {
                Clocks =
                [
                    new()
                    {
                        Id = new("c"),
                        SampleRate = 44_100,
                        Leader = new("desk"),
                    },
                ],
                Networks = [show.Rig.Networks[0] with { Clock = new("c"), PacketMicroseconds = microseconds }],
            },
        };

        Assert.Equal(bits, new NetworkFacts(new RigFacts(show, _ => null, [])).BitsPerSecond(show.Rig.Networks[0], 8));
    }

    [Fact]
    public void A_tree_takes_the_fewest_hops_and_the_first_link_by_name()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box-a", SmallProfiles.Box), ("box-b", SmallProfiles.Box), ("box-c", SmallProfiles.Box));
        show = show with
        {
            Rig = show.Rig with
            {
                // Two ways of two hops to box-c, by box-a and by box-b; the last link in the document has the first name.
                Links =
                [
                    Link("m1", "desk/net/1", "box-a/net/1"),
                    Link("m2", "desk/net/2", "box-b/net/1"),
                    Link("z", "box-a/net/2", "box-c/net/1"),
                    Link("a", "box-b/net/2", "box-c/net/2"),
                ],
            },
        };
        var rig = new RigFacts(show, _ => null, []);
        var tree = new NetworkFacts(rig).Tree(new("net"), rig.Device(new("desk"))!.Group(new("transmit"))!, [rig.Device(new("box-c"))!.Group(new("receive"))!]);

        Assert.Equal(["a True", "m2 True"], tree!.OrderBy(step => step.Link).Select(step => $"{step.Link} {step.IsForward}"));
    }

    private static Link Link(string id, string from, string to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = At(to),
        };
}
