namespace RoutingRules.Schema;

/// <summary>Where a document departs from its schema.</summary>
public sealed record SchemaProblem
{
    /// <summary>The place as a JSON Pointer (RFC 6901); empty for the whole document. A missing member is named as if it were there.</summary>
    public required string Pointer { get; init; }

    /// <summary>What is wrong, in a sentence.</summary>
    public required string Message { get; init; }
}
