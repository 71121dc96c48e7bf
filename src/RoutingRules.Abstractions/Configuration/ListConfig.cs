using RoutingRules.Model;

namespace RoutingRules.Configuration;

/// <summary>How a crew writes its list of feeds or of lines.</summary>
public sealed record ListConfig
{
    /// <summary>
    /// Columns by other names than those of the members; of several for one header the last counts, and of several for one member the last is written.
    /// </summary>
    public ValueList<ListColumn> Columns { get; init; }

    /// <summary>Headers of columns that are not read.</summary>
    public ValueList<string> Ignore { get; init; }

    /// <summary>Other words in cells; of several for one cell the last counts.</summary>
    public ValueList<ListWord> Words { get; init; }
}
