using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>A place at which a feed or line arrives as the show stands.</summary>
internal sealed class Arrival
{
    public required DemandNode Demand { get; init; }

    /// <summary>Position of the sink in the line's <c>to</c>; -1 for a feed.</summary>
    public int Sink { get; init; } = -1;

    /// <summary>True for what one of several cables of an output leads to.</summary>
    public bool IsBranch { get; init; }

    /// <summary>First point of the run it leaves from: the output of a feed, the input of a line.</summary>
    public required PointIndex Run { get; init; }

    /// <summary>Where people look for it.</summary>
    public required PointRange At { get; init; }

    /// <summary>The last points on the way, one for each position: what plays an output over one of its cables, or the sink.</summary>
    public required int[] Ends { get; init; }

    /// <summary>The source that each end must be fed by: the bus of a feed, the input of a line.</summary>
    public PointIndex Source => Demand.Feed?.Source ?? Run;
}
