using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>A profile at one sample rate, laid out for copying into graphs. Local indices count all points of the device from 0.</summary>
internal sealed class CompiledProfile
{
    /// <summary>In <see cref="FixedSource"/>: the sink is not fixed.</summary>
    public const int NotFixed = -2;

    /// <summary>In <see cref="FixedSource"/>: the sink is fixed to silence.</summary>
    public const int FixedSilent = -1;

    public required DeviceProfile Model { get; init; }

    public required GroupNode[] Groups { get; init; }

    public required int PointCount { get; init; }

    /// <summary>Group position of each local point.</summary>
    public required ushort[] GroupOf { get; init; }

    /// <summary>What feeds each local point before any patch; -1 for nothing.</summary>
    public required int[] Upstream { get; init; }

    /// <summary>How, for each local point.</summary>
    public required HopKind[] Via { get; init; }

    /// <summary>The source a fixed sink always takes, <see cref="FixedSilent"/> or <see cref="NotFixed"/>.</summary>
    public required int[] FixedSource { get; init; }

    /// <summary>Whether a fixed sink can be set to nothing.</summary>
    public required bool[] Clearable { get; init; }

    /// <summary>Routing entry for each pair (from group, to group), row by row; null when nothing may be routed.</summary>
    public required RoutingEntry?[] Routing { get; init; }

    /// <summary>What is wrong with the profile, in plain sentences; empty when it is sound.</summary>
    public required ValueList<ProfileProblem> Problems { get; init; }

    public RoutingEntry? RoutingBetween(GroupNode from, GroupNode to) => Routing[(from.Index * Groups.Length) + to.Index];
}
