namespace RoutingRules.Engine.Configuration;

/// <summary>A value that counts, and where it was set.</summary>
public sealed record EffectiveValue
{
    /// <summary>What it is of: <c>enabled</c>, <c>severity</c>, <c>failOn</c>, or the name of an option.</summary>
    public required string Name { get; init; }

    /// <summary>The value as written in a configuration.</summary>
    public required string Value { get; init; }

    /// <summary>The file, line and column that set it, such as <c>crew.json:4:9</c>; null for the default.</summary>
    public string? Place { get; init; }
}
