namespace RoutingRules.Profiles;

/// <summary>The level or kind of signal at a connector.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct SignalLevel
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public SignalLevel(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>Microphone level, microphone preamplifier.</summary>
    public static SignalLevel Mic => new("mic");

    /// <summary>Line level.</summary>
    public static SignalLevel Line => new("line");

    /// <summary>Loudspeaker level from a power amplifier.</summary>
    public static SignalLevel Speaker => new("speaker");

    /// <summary>AES3 digital pair.</summary>
    public static SignalLevel Aes3 => new("aes3");

    /// <summary>Headphone level.</summary>
    public static SignalLevel Headphone => new("headphone");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
