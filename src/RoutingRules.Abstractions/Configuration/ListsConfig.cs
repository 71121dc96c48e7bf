namespace RoutingRules.Configuration;

/// <summary>How a crew writes its lists of feeds and lines.</summary>
public sealed record ListsConfig
{
    /// <summary>What stands between cells; null to find out on reading, and for a comma on writing.</summary>
    public ListSeparator? Separator { get; init; }

    /// <summary>The list of feeds.</summary>
    public ListConfig Feeds { get; init; } = new();

    /// <summary>The list of lines.</summary>
    public ListConfig Lines { get; init; } = new();
}
