namespace RoutingRules.Planning.Comparing;

/// <summary>A member of an entity that says something else than before.</summary>
public sealed record MemberChange
{
    /// <summary>The member as documents write it, such as <c>zone</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The value before as JSON on one line; null when the member was absent.</summary>
    public string? Before { get; init; }

    /// <summary>The value after as JSON on one line; null when the member is absent.</summary>
    public string? After { get; init; }
}
