using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Upgrading;

/// <summary>A document in the present format version, with what that took.</summary>
public sealed record UpgradeResult
{
    /// <summary>The text: that of the document itself, byte for byte, when there were no steps.</summary>
    public required ReadOnlyMemory<byte> Utf8 { get; init; }

    /// <summary>The steps, oldest first; empty when the document is in the present version or cannot be upgraded.</summary>
    public ValueList<UpgradeStep> Steps { get; init; }

    /// <summary>What is wrong with the document, in the present version if it was brought there; without lines and columns then.</summary>
    public ValueList<Finding> Findings { get; init; }

    /// <summary>True when the text can be read in full in the present version, so that it may take the place of the document.</summary>
    public required bool IsUsable { get; init; }
}
