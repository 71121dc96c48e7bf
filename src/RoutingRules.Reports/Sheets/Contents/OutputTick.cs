using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A place that a feed shall reach: one box to tick.</summary>
public sealed record OutputTick
{
    /// <summary>What the document asks for, in words.</summary>
    public required string Wanted { get; init; }

    /// <summary>Where it arrives, over each cable of the output; empty when it does not.</summary>
    public ValueList<SheetPath> Arrives { get; init; }
}
