using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>One sink of a line with how the line stands there.</summary>
internal readonly record struct LineSink
{
    /// <summary>Position in the line's <c>to</c>, from 0.</summary>
    public required int Entry { get; init; }

    /// <summary>First point of the sink.</summary>
    public required PointIndex At { get; init; }

    public required EntryState State { get; init; }

    /// <summary>For pairs: the input that arrives at the first point; none when none of the line's does.</summary>
    public PointIndex First { get; init; }

    /// <summary>For pairs: the input that arrives at the second point; none when none of the line's does.</summary>
    public PointIndex Second { get; init; }
}
