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

    /// <summary>Multimode fibre.</summary>
    public static Medium FibreMultimode => new("fibre-multimode");

    /// <summary>Single-mode fibre.</summary>
    public static Medium FibreSinglemode => new("fibre-singlemode");

    /// <summary>Coaxial cable.</summary>
    public static Medium Coax => new("coax");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
