namespace RoutingRules.Profiles;

/// <summary>A connector, seen on the device.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct Connector
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public Connector(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>Three-pin socket contacts: an input by custom of the trade.</summary>
    public static Connector XlrSocket => new("xlr-socket");

    /// <summary>Three-pin pin contacts: an output by custom of the trade.</summary>
    public static Connector XlrPins => new("xlr-pins");

    /// <summary>6.35 mm jack.</summary>
    public static Connector Jack => new("jack");

    /// <summary>Loudspeaker connector.</summary>
    public static Connector Speaker => new("speaker-connector");

    /// <summary>Eight-position modular jack.</summary>
    public static Connector Rj45 => new("rj45");

    /// <summary>Coaxial.</summary>
    public static Connector Bnc => new("bnc");

    /// <summary>Optical fibre.</summary>
    public static Connector Fibre => new("fibre");

    /// <summary>Multi-pin connector of a loom.</summary>
    public static Connector Multipin => new("multipin");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
