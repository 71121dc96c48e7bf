using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.Comparing;

/// <summary>An output, a channel or another sink whose source changes, or a run of them that change alike.</summary>
public sealed record SinkChange
{
    /// <summary>The outputs or channels, by the ids of the second show.</summary>
    public required PointRange At { get; init; }

    /// <summary>An output, a sink inside a device, or a receive slot at which somebody hears it or a loudspeaker plays it.</summary>
    public required PortKind Kind { get; init; }

    /// <summary>What became of the signal.</summary>
    public required SinkEffect Effect { get; init; }

    /// <summary>The real sources before, position by position; null for silence.</summary>
    public PointRange? Before { get; init; }

    /// <summary>The real sources after, position by position; null for silence.</summary>
    public PointRange? After { get; init; }

    /// <summary>The feed or line it served, as people call it; null for none.</summary>
    public string? ServedBefore { get; init; }

    /// <summary>The feed or line it serves now; null for none.</summary>
    public string? ServesAfter { get; init; }

    /// <summary>What is plugged in at the input it came from, where the show says so; null for none.</summary>
    public string? LineBefore { get; init; }

    /// <summary>What is plugged in at the input it comes from, where the show says so; null for none.</summary>
    public string? LineAfter { get; init; }

    /// <summary>True when it is heard in somebody's ears, or an in-ear feed is served there, before or after.</summary>
    public required bool IsInEar { get; init; }
}
