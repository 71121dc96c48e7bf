using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Neighbouring points whose sources all arrive the same number of points away.</summary>
internal sealed class DisplacedRun
{
    /// <summary>First of the points where the sources belong.</summary>
    public required PointIndex Wanted { get; init; }

    public required int Width { get; init; }

    /// <summary>How far away they arrive, in points; below 0 towards lower numbers.</summary>
    public required int Shift { get; init; }

    /// <summary>The demands that belong there, in the order of their points, each once.</summary>
    public required List<DemandNode> Demands { get; init; }
}
