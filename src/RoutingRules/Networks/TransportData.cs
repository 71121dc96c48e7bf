using RoutingRules.Model;

namespace RoutingRules.Networks;

/// <summary>The ways of carrying audio that the engine knows in numbers.</summary>
/// <remarks>
/// Ethernet around a payload: 38 octets, 42 with a VLAN tag (IEEE 802.1Q-2014, 34.4, as the manual page tc-cbs(8) cites it). Before the samples: 24 octets
/// of IEEE 1722-2016, clause 7, or 40 of IPv4, UDP and RTP (RFC 791, 768 and 3550, from memory). Payloads of 1500 octets; AES67 allows 1440 octets of
/// samples (clauses 6 and 7, from memory). Packet times as AES67, clause 7.2, and the class intervals of IEEE 802.1Q (from memory); at 44.1 kHz a packet
/// holds as many samples as at 48 kHz (AES67-2023, 7.2, as open test code cites it: 6 at 125 microseconds). AES10: 32 bit a channel and sample.
/// </remarks>
internal static class TransportData
{
    private const int Ethernet = 38;
    private const int TaggedEthernet = 42;

    private static readonly TransportKind RtpL24 = new()
    {
        Transport = Transport.RtpL24,
        SampleOctets = 3,
        HeaderOctets = 40,
        FrameOctets = Ethernet,
        ShortestPayload = 46,
        MaxSampleOctets = 1440,
        PacketMicroseconds = 1000,
    };

    private static readonly TransportKind AvtpClassA = new()
    {
        Transport = Transport.AvtpClassA,
        SampleOctets = 4,
        HeaderOctets = 24,
        FrameOctets = TaggedEthernet,
        ShortestPayload = 42,
        MaxSampleOctets = 1500 - 24,
        PacketMicroseconds = 125,
        IsPaced = true,
    };

    private static readonly TransportKind[] Known =
    [
        RtpL24,
        RtpL24 with
        {
            Transport = Transport.RtpL16,
            SampleOctets = 2,
        },
        AvtpClassA,
        AvtpClassA with
        {
            Transport = Transport.AvtpClassB,
            PacketMicroseconds = 250,
        },
        new() { Transport = Transport.PointToPoint, SampleOctets = 4 },
    ];

    /// <summary>
    /// True for a packet time of AES67, clause 7.2: 125, 250, 333 1/3 microseconds, 1 and 4 ms. ST 2110-30 has 125 microseconds and 1 ms of them.
    /// </summary>
    public static bool IsUsualRtpTime(int microseconds) => microseconds is 125 or 250 or 333 or 334 or 1000 or 4000;

    /// <summary>The numbers of a transport; null when the engine knows none.</summary>
    public static TransportKind? Find(Transport transport)
    {
        foreach (var kind in Known)
        {
            if (kind.Transport == transport)
            {
                return kind;
            }
        }

        return null;
    }

    /// <summary>What a stream puts on the wire; null when the transport is not known.</summary>
    /// <param name="network">The network.</param>
    /// <param name="sampleRate">Sample rate in hertz.</param>
    /// <param name="channels">Channels, from 1.</param>
    public static PacketLoad? Load(Network network, int sampleRate, int channels) =>
        Find(network.Transport)?.Load(network.PacketMicroseconds, sampleRate, channels);

    /// <summary>Why a rule cannot decide about a network whose transport is not known.</summary>
    public static string Unknown(Network network) =>
        $"How much network '{network.Id}' carries is not known: the engine has no numbers for transport '{network.Transport}'.";
}
