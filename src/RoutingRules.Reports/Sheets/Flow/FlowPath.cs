using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>The way of one signal to one end.</summary>
internal sealed class FlowPath
{
    /// <summary>From the source to the end.</summary>
    public required List<PointIndex> Points { get; init; }

    public required string Name { get; init; }

    public required bool IsInEar { get; init; }
}
