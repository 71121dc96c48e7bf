using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>One entry of a feed with how it stands.</summary>
internal sealed class FeedEntry
{
    public required DemandNode Demand { get; init; }

    public required EntryState State { get; init; }

    /// <summary>For pairs: the point where left arrives; none when it does not.</summary>
    public PointIndex Left { get; init; }

    /// <summary>For pairs: the point where right arrives; none when it does not.</summary>
    public PointIndex Right { get; init; }

    /// <summary>For pairs that are pinned: the first point as written.</summary>
    public PointIndex At { get; init; }
}
