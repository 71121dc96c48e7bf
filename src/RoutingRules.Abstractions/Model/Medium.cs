namespace RoutingRules.Model;

/// <summary>What a link is made of.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct Medium
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public Medium(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>Balanced pairs with solid conductors.</summary>
    public static Medium CopperSolid => new("copper-solid");

    /// <summary>Balanced pairs with stranded conductors, such as a touring reel.</summary>
    public static Medium CopperStranded => new("copper-stranded");

    /// <summary>Balanced pairs of category 5e; nothing is said about the conductors.</summary>
    public static Medium Cat5E => new("cat5e");

    /// <summary>Balanced pairs of category 6.</summary>
    public static Medium Cat6 => new("cat6");

    /// <summary>Balanced pairs of category 6A.</summary>
    public static Medium Cat6A => new("cat6a");

    /// <summary>Multimode fibre of a grade that is not stated.</summary>
    public static Medium FibreMultimode => new("fibre-multimode");

    /// <summary>Multimode fibre of grade OM1, 62.5 micrometres.</summary>
    public static Medium Om1 => new("om1");

    /// <summary>Multimode fibre of grade OM2.</summary>
    public static Medium Om2 => new("om2");

    /// <summary>Multimode fibre of grade OM3.</summary>
    public static Medium Om3 => new("om3");

    /// <summary>Multimode fibre of grade OM4.</summary>
    public static Medium Om4 => new("om4");

    /// <summary>Multimode fibre of grade OM5.</summary>
    public static Medium Om5 => new("om5");

    /// <summary>Single-mode fibre of grade OS1.</summary>
    public static Medium Os1 => new("os1");

    /// <summary>Single-mode fibre of grade OS2.</summary>
    public static Medium Os2 => new("os2");

    /// <summary>Single-mode fibre of a grade that is not stated.</summary>
    public static Medium FibreSinglemode => new("fibre-singlemode");

    /// <summary>Coaxial cable.</summary>
    public static Medium Coax => new("coax");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
