using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>One thing to place: an entry of a feed's <c>to</c>, or a line.</summary>
public sealed class DemandNode
{
    /// <summary>The name used in reports: <c>feed-id/1</c> for the first entry of a feed, the id for a line.</summary>
    public required string Key { get; init; }

    /// <summary>Position in demand order: feeds with their entries first, then lines.</summary>
    public required int Index { get; init; }

    /// <summary>The feed; null for a line.</summary>
    public FeedNode? Feed { get; init; }

    /// <summary>The line; null for a feed.</summary>
    public LineNode? Line { get; init; }

    /// <summary>Position of the entry in the feed's <c>to</c>, from 0; 0 for a line.</summary>
    public required int Entry { get; init; }

    /// <summary>How many points wide: 1 or 2.</summary>
    public required int Width { get; init; }

    /// <summary>True when the document names the points themselves.</summary>
    public required bool IsPinned { get; init; }

    /// <summary>
    /// First points of the runs that may serve the demand, each once, in order of device and number, dead and reserved ones included.
    /// For a pinned feed one run; for a line with several <c>at</c> the runs in the order written. Empty when nothing suits or nothing resolves.
    /// </summary>
    /// <remarks>Pairs that start on an even number are left out unless pinned.</remarks>
    public required ValueList<PointIndex> Allowed { get; init; }

    /// <summary>Pairs that start on an even number: they may stay where they are, but are not chosen anew.</summary>
    internal ValueList<PointIndex> EvenRuns { get; init; }

    /// <summary>First point of the run that serves the demand in the patch as it stands; none when it is not served.</summary>
    public PointIndex Existing { get; internal set; }

    /// <summary>True when factory routes alone serve it: no route of the patch and no stream is on the way.</summary>
    public bool IsFactoryOnly { get; internal set; }

    /// <summary>True when the demand is served and its placement is hard.</summary>
    public bool IsHeld { get; internal set; }

    /// <summary>The name for people: the feed's or line's, with the entry when there are several.</summary>
    public string DisplayName =>
        Line?.DisplayName ?? (Feed!.Model.To.Count > 1 ? $"{Feed.DisplayName} ({Entry + 1} of {Feed.Model.To.Count})" : Feed.DisplayName);
}
