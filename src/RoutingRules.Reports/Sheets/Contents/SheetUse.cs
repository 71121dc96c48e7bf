using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One position of a feed or line at a point.</summary>
internal sealed class SheetUse
{
    public FeedNode? Feed { get; init; }

    public LineNode? Line { get; init; }

    /// <summary>0 for mono and left, 1 for right.</summary>
    public required int Position { get; init; }

    public required PointIndex Start { get; init; }

    public string Name => SheetWords.Half(Feed?.DisplayName ?? Line!.DisplayName, Feed?.Width ?? Line!.Width, Position);
}
