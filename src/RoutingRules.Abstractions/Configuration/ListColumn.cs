namespace RoutingRules.Configuration;

/// <summary>What a crew's column is called, and which member it holds.</summary>
public sealed record ListColumn
{
    /// <summary>The text at the head of the column; case, spaces, hyphens and underscores do not matter.</summary>
    public required string Header { get; init; }

    /// <summary>The member of a feed or a line, such as <c>source</c>.</summary>
    public required string Member { get; init; }
}
