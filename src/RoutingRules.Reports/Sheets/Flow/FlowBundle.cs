using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>A stream, a carrier link or the cables between two devices, with the signals it carries.</summary>
internal sealed class FlowBundle
{
    public required string Name { get; init; }

    public string? Note { get; init; }

    public List<(PointIndex From, PointIndex To, string Name, bool IsInEar)> Runs { get; } = [];
}
