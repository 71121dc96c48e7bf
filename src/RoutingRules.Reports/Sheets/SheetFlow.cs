using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets;

/// <summary>A drawing of signal flow, from sources on the left to where they end on the right.</summary>
public sealed record SheetFlow
{
    /// <summary>What it shows.</summary>
    public required string Title { get; init; }

    /// <summary>Its places: column by column they stand in the order in which they were found; a writer may arrange them within their columns.</summary>
    public ValueList<SheetFlowNode> Nodes { get; init; }

    /// <summary>What runs between them, each from a lower column to a higher one.</summary>
    public ValueList<SheetFlowEdge> Edges { get; init; }
}
