namespace RoutingRules.Model;

/// <summary>The content of an <c>extensions</c> member: a JSON object that the engine keeps on writing and never reads.</summary>
public sealed record ExtensionData
{
    /// <summary>The object as JSON text, as it stood in the document.</summary>
    public required string Json { get; init; }
}
