namespace RoutingRules.Model;

/// <summary>How audio travels on a network.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct Transport
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public Transport(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>RTP linear PCM, 24 bit (AES67, ST 2110-30).</summary>
    public static Transport RtpL24 => new("rtp-l24");

    /// <summary>RTP linear PCM, 16 bit (AES67, ST 2110-30).</summary>
    public static Transport RtpL16 => new("rtp-l16");

    /// <summary>IEEE 1722 AVTP in class A (IEEE 802.1BA).</summary>
    public static Transport AvtpClassA => new("avtp-class-a");

    /// <summary>IEEE 1722 AVTP in class B (IEEE 802.1BA).</summary>
    public static Transport AvtpClassB => new("avtp-class-b");

    /// <summary>A digital multicore such as AES10: the link is the stream.</summary>
    public static Transport PointToPoint => new("point-to-point");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
