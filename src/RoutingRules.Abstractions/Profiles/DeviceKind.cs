namespace RoutingRules.Profiles;

/// <summary>The kind of a device.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct DeviceKind
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public DeviceKind(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>A mixing console.</summary>
    public static DeviceKind Console => new("console");

    /// <summary>A networked or cabled box of inputs and outputs.</summary>
    public static DeviceKind StageBox => new("stage-box");

    /// <summary>A power amplifier.</summary>
    public static DeviceKind Amplifier => new("amplifier");

    /// <summary>A loudspeaker or signal processor.</summary>
    public static DeviceKind Processor => new("processor");

    /// <summary>A recorder or player.</summary>
    public static DeviceKind Recorder => new("recorder");

    /// <summary>In-ear transmitters.</summary>
    public static DeviceKind TransmitterRack => new("transmitter-rack");

    /// <summary>Wireless microphone receivers.</summary>
    public static DeviceKind ReceiverRack => new("receiver-rack");

    /// <summary>A passive split.</summary>
    public static DeviceKind Split => new("split");

    /// <summary>A network switch.</summary>
    public static DeviceKind Switch => new("switch");

    /// <summary>A powered loudspeaker.</summary>
    public static DeviceKind Loudspeaker => new("loudspeaker");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
