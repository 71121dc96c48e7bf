using RoutingRules.Resolving;

namespace RoutingRules.Reporting.Sheets;

/// <summary>The way of one signal to one end.</summary>
internal sealed class FlowWay
{
    /// <summary>From the source to the end.</summary>
    public required List<PointIndex> Points { get; init; }

    public required string Name { get; init; }

    public required bool IsInEar { get; init; }
}
