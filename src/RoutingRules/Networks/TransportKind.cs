using RoutingRules.Model;

namespace RoutingRules.Networks;

/// <summary>What one way of carrying audio puts on the wire.</summary>
internal sealed record TransportKind
{
    public required Transport Transport { get; init; }

    /// <summary>Octets a sample takes in its slot.</summary>
    public required int SampleOctets { get; init; }

    /// <summary>Octets before the samples, inside the Ethernet payload.</summary>
    public int HeaderOctets { get; init; }

    /// <summary>Octets around the Ethernet payload: header, tag, checksum, preamble and gap.</summary>
    public int FrameOctets { get; init; }

    /// <summary>Shorter payloads are padded to this.</summary>
    public int ShortestPayload { get; init; }

    /// <summary>Most octets of samples in one packet; null where packets have no such limit.</summary>
    public int? MaxSampleOctets { get; init; }

    /// <summary>The usual packet time; null for one packet a sample.</summary>
    public int? PacketMicroseconds { get; init; }

    /// <summary>True when packets leave at fixed intervals whatever the sample rate, false when a packet leaves once it is full.</summary>
    public bool IsPaced { get; init; }

    /// <summary>Most channels one packet holds at a number of samples a channel; null without limit.</summary>
    public int? MaxChannels(int samples) => MaxSampleOctets / (samples * SampleOctets);

    /// <summary>What a stream puts on the wire.</summary>
    /// <param name="packetMicroseconds">The packet time of the network; null for the usual one.</param>
    /// <param name="sampleRate">Sample rate in hertz.</param>
    /// <param name="channels">Channels, from 1.</param>
    public PacketLoad Load(int? packetMicroseconds, int sampleRate, int channels)
    {
        if ((packetMicroseconds ?? PacketMicroseconds) is not { } microseconds || PacketMicroseconds is null)
        {
            return Packets(1, sampleRate, channels * SampleOctets);
        }

        var samples = Math.Max(1, Samples(microseconds, sampleRate));
        return Packets(samples, IsPaced ? 1_000_000.0 / microseconds : (double)sampleRate / samples, samples * channels * SampleOctets);
    }

    /// <summary>
    /// Samples of each channel in a packet. Rates that do not fill whole packets, and a third of a millisecond written as 333, are rounded up to the next
    /// sample. RTP at 44.1 kHz and its multiples puts as many into a packet as at 48 kHz; a time that is no usual one is taken as it is, to the nearest sample.
    /// </summary>
    private int Samples(int microseconds, int sampleRate)
    {
        if (IsPaced || sampleRate % 11_025 != 0)
        {
            return (int)((((long)sampleRate * microseconds) + 999_999) / 1_000_000);
        }

        return TransportData.IsUsualRtpTime(microseconds)
            ? (int)((((long)sampleRate / 11_025 * 12_000 * microseconds) + 999_999) / 1_000_000)
            : (int)((((long)sampleRate * microseconds) + 500_000) / 1_000_000);
    }

    /// <summary>What packets of a known size put on the wire.</summary>
    /// <param name="samples">Samples of each channel in a packet.</param>
    /// <param name="packetsPerSecond">Packets each second.</param>
    /// <param name="sampleOctets">Octets of samples in a packet.</param>
    public PacketLoad Packets(int samples, double packetsPerSecond, int sampleOctets)
    {
        var wire = Math.Max(HeaderOctets + sampleOctets, ShortestPayload) + FrameOctets;
        return new PacketLoad
        {
            Samples = samples,
            SampleOctets = sampleOctets,
            WireOctets = wire,
            PacketsPerSecond = packetsPerSecond,
        };
    }
}
