using RoutingRules.Model;

namespace RoutingRules.Waivers;

/// <summary>The known findings of one document.</summary>
public sealed record BaselineDocument
{
    /// <summary>The path of the document with <c>/</c>, relative to the folder of the baseline.</summary>
    public required string Path { get; init; }

    /// <summary>The findings, by rule and then fingerprint, ordinal.</summary>
    public ValueList<BaselineFinding> Findings { get; init; }
}
