namespace RoutingRules.Checking.Facts.Documents;

/// <summary>A member of <c>extensions</c> that something at hand understands.</summary>
public sealed record KnownExtension
{
    /// <summary>The name of the member.</summary>
    public required string Name { get; init; }

    /// <summary>The highest number in its <c>version</c> that is understood.</summary>
    public required int HighestVersion { get; init; }
}
