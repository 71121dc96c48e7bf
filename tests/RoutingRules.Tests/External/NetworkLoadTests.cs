using RoutingRules.Model;
using RoutingRules.Networks;

namespace RoutingRules.Tests.External;

/// <summary>What streams put on the wire, against published reservations and sums written out by hand.</summary>
public sealed class NetworkLoadTests
{
    // Published: open TSN documentation project (tsn.readthedocs.io), "Configuring CBS Qdisc", stream B: class B, 16 bit, 48 kHz, stereo, idleslope 3648
    // kbit/s.
    [Fact]
    public void A_published_class_b_reservation_is_met()
    {
        var kind = TransportData.Find(Transport.AvtpClassB)! with { SampleOctets = 2 };

        Assert.Equal(3_648_000, kind.Load(null, 48_000, 2).BitsPerSecond);
        Assert.Equal(114, kind.Load(null, 48_000, 2).WireOctets);
    }

    // Published: the same page, stream A: class A, compressed video of 1470 octets behind 30 octets of header, 1542 on the wire, idleslope 98688 kbit/s.
    [Fact]
    public void A_published_class_a_reservation_is_met()
    {
        var kind = TransportData.Find(Transport.AvtpClassA)! with { HeaderOctets = 30 };

        Assert.Equal(98_688_000, kind.Packets(6, 8000, 1470).BitsPerSecond);
    }

    // 24 octets of IEEE 1722-2016, clause 7, and 42 of tagged Ethernet (IEEE 802.1Q-2014, 34.4, as tc-cbs(8) cites it) around 4 octets a sample:
    // 48 kHz, 8 channels: 6 x 8 x 4 = 192, + 24 + 42 = 258, x 8 x 8000 = 16 512 000.
    [Theory]
    [InlineData(48_000, 1, 24, 90, 5_760)]
    [InlineData(48_000, 2, 48, 114, 7_296)]
    [InlineData(48_000, 8, 192, 258, 16_512)]
    [InlineData(48_000, 16, 384, 450, 28_800)]
    [InlineData(48_000, 32, 768, 834, 53_376)]
    [InlineData(48_000, 60, 1440, 1506, 96_384)]
    [InlineData(96_000, 2, 96, 162, 10_368)]
    [InlineData(96_000, 8, 384, 450, 28_800)]
    [InlineData(96_000, 16, 768, 834, 53_376)]
    public void Class_a_streams_take_what_their_packets_sum_up_to(int rate, int channels, int samples, int wire, int kilobits) =>
        AssertLoad(Transport.AvtpClassA, null, rate, channels, samples, wire, kilobits);

    // 48 kHz, 8 channels: 12 x 8 x 4 = 384, + 24 + 42 = 450, x 8 x 4000 = 14 400 000; 2 channels: 96 + 66 = 162, x 8 x 4000 = 5 184 000.
    [Theory]
    [InlineData(8, 384, 450, 14_400)]
    [InlineData(2, 96, 162, 5_184)]
    public void Class_b_streams_take_what_their_packets_sum_up_to(int channels, int samples, int wire, int kilobits) =>
        AssertLoad(Transport.AvtpClassB, null, 48_000, channels, samples, wire, kilobits);

    // A single channel of 16 bit in class A: 12 + 24 = 36 octets, padded to 42 (IEEE 802.3 and 802.1Q, from memory), + 42 = 84, x 8 x 8000 = 5 376 000.
    [Fact]
    public void Short_payloads_are_padded() =>
        Assert.Equal(5_376_000, (TransportData.Find(Transport.AvtpClassA)! with { SampleOctets = 2 }).Load(null, 48_000, 1).BitsPerSecond);

    // 20 + 8 + 12 octets of IPv4, UDP and RTP (RFC 791, 768, 3550, from memory) and 38 of Ethernet around 3 or 2 octets a sample:
    // 48 kHz, 24 bit, 1 ms, 8 channels: 48 x 8 x 3 = 1152, + 40 + 38 = 1230, x 8 x 1000 = 9 840 000.
    [Theory]
    [InlineData("rtp-l24", null, 48_000, 8, 1152, 1230, 9_840)]
    [InlineData("rtp-l24", 1000, 48_000, 1, 144, 222, 1_776)]
    [InlineData("rtp-l24", 1000, 48_000, 2, 288, 366, 2_928)]
    [InlineData("rtp-l24", 1000, 48_000, 8, 1152, 1230, 9_840)]
    [InlineData("rtp-l16", 1000, 48_000, 8, 768, 846, 6_768)]
    [InlineData("rtp-l24", 125, 48_000, 8, 144, 222, 14_208)]
    [InlineData("rtp-l24", 125, 48_000, 64, 1152, 1230, 78_720)]
    [InlineData("rtp-l24", 250, 48_000, 8, 288, 366, 11_712)]
    [InlineData("rtp-l24", 333, 48_000, 8, 384, 462, 11_088)]
    [InlineData("rtp-l24", 4000, 48_000, 2, 1152, 1230, 2_460)]
    [InlineData("rtp-l24", 1000, 96_000, 2, 576, 654, 5_232)]
    [InlineData("rtp-l24", 125, 96_000, 8, 288, 366, 23_424)]
    public void Rtp_streams_take_what_their_packets_sum_up_to(
        string transport,
        int? microseconds,
        int rate,
        int channels,
        int samples,
        int wire,
        int kilobits
    ) => AssertLoad(new(transport), microseconds, rate, channels, samples, wire, kilobits);

    // AES67-2023, 7.2, as the tests of an open library cite it: 6 samples at 44.1 kHz and 125 microseconds, 12 at 88.2 kHz; 48 samples are the usual
    // packet. 48 x 8 x 3 = 1152, + 78 = 1230, x 8 x 44100 / 48 = 9 040 500; 6 x 8 x 3 = 144, + 78 = 222, x 8 x 44100 / 6 = 13 053 600.
    [Theory]
    [InlineData(1000, 44_100, 8, 1152, 1230, 9_040.5)]
    [InlineData(1088, 44_100, 8, 1152, 1230, 9_040.5)]
    [InlineData(1089, 44_100, 8, 1152, 1230, 9_040.5)]
    [InlineData(125, 44_100, 8, 144, 222, 13_053.6)]
    [InlineData(125, 88_200, 4, 144, 222, 13_053.6)]
    public void Rtp_packets_at_44_kilohertz_hold_as_many_samples_as_at_48(int microseconds, int rate, int channels, int samples, int wire, double kilobits)
    {
        var network = new Network
        {
            Id = new("n"),
            Transport = Transport.RtpL24,
            PacketMicroseconds = microseconds,
        };
        var load = TransportData.Load(network, rate, channels)!.Value;

        Assert.Equal((samples, wire), (load.SampleOctets, load.WireOctets));
        Assert.Equal(kilobits * 1000, load.BitsPerSecond, 3);
    }

    // 1500 octets less 40 of IPv6, 8 of UDP and 12 of RTP leave 1440 (AES67, clauses 6 and 7, from memory); public encyclopaedia text on AES67
    // gives 120 channels for 16 bit at 125 microseconds. 48 kHz, 24 bit, 1 ms: 1440 / (48 x 3) = 10.
    [Theory]
    [InlineData("rtp-l24", 48_000, 125, 80)]
    [InlineData("rtp-l24", 48_000, 250, 40)]
    [InlineData("rtp-l24", 48_000, 333, 30)]
    [InlineData("rtp-l24", 48_000, 1000, 10)]
    [InlineData("rtp-l24", 48_000, 4000, 2)]
    [InlineData("rtp-l16", 48_000, 125, 120)]
    [InlineData("rtp-l16", 48_000, 1000, 15)]
    [InlineData("rtp-l16", 48_000, 4000, 3)]
    [InlineData("rtp-l24", 96_000, 1000, 5)]
    [InlineData("rtp-l24", 96_000, 4000, 1)]
    [InlineData("rtp-l16", 96_000, 333, 22)]
    [InlineData("avtp-class-a", 48_000, 125, 61)] // (1500 - 24) / 24
    [InlineData("avtp-class-a", 96_000, 125, 30)] // (1500 - 24) / 48
    public void Packets_hold_so_many_channels(string transport, int rate, int microseconds, int channels)
    {
        var kind = TransportData.Find(new(transport))!;

        Assert.Equal(channels, kind.MaxChannels(kind.Load(microseconds, rate, 1).Samples));
    }

    // AES10: 125 Mbit/s on the line carry 100 Mbit/s of data, 32 bit a channel; 64 channels at 48 kHz, 56 with a varispeed of 12.5 %, 28 at 96 kHz with it
    // (handbook excerpt and public encyclopaedia text): 64 x 32 x 48000 = 98.304, 56 x 32 x 54000 = 96.768, 28 x 32 x 108000 = 96.768 Mbit/s.
    [Theory]
    [InlineData(64, 48_000, 98_304)]
    [InlineData(56, 54_000, 96_768)]
    [InlineData(28, 108_000, 96_768)]
    public void A_digital_multicore_carries_so_much(int channels, int rate, int kilobits)
    {
        var load = TransportData.Find(Transport.PointToPoint)!.Load(null, rate, channels);

        Assert.Equal(kilobits * 1000.0, load.BitsPerSecond);
        Assert.InRange(load.BitsPerSecond, 0, 100_000_000);
    }

    [Fact]
    public void A_transport_the_engine_does_not_know_has_no_numbers() => Assert.Null(TransportData.Find(new("smoke-signals")));

    private static void AssertLoad(Transport transport, int? microseconds, int rate, int channels, int samples, int wire, int kilobits)
    {
        var load = TransportData
            .Load(
                new Network
                {
                    Id = new("n"),
                    Transport = transport,
                    PacketMicroseconds = microseconds,
                },
                rate,
                channels
            )!
            .Value;

        Assert.Equal(samples, load.SampleOctets);
        Assert.Equal(wire, load.WireOctets);
        Assert.Equal(kilobits * 1000.0, load.BitsPerSecond, 3);
    }
}
