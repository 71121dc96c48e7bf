using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>A feed or line with the places at which it arrives.</summary>
internal sealed class LossSubject
{
    public FeedNode? Feed { get; init; }

    public LineNode? Line { get; init; }

    public required int Index { get; init; }

    /// <summary>Positions in the list of deliveries.</summary>
    public List<int> Deliveries { get; } = [];

    /// <summary>Subjects that say they back this one up.</summary>
    public List<int> Backups { get; } = [];

    public string Id => Feed?.Model.Id.Value ?? Line!.Model.Id.Value;

    public string Name => Feed?.DisplayName ?? Line!.DisplayName;

    public Priority Priority => Feed?.Model.Priority ?? Line!.Model.Priority;

    /// <summary>True for a feed that ends in somebody's ears, whatever its role says.</summary>
    public bool IsInEar { get; init; }

    public bool IsMain => Feed is { } feed && feed.Model.Role == FeedRole.Main;

    public bool IsProtected => Feed is not null && (Priority <= Priority.High || IsMain || IsInEar);

    /// <summary>Smaller matters more: in-ear feeds, mains, other feeds by priority, lines by priority.</summary>
    public int Rank =>
        Feed is null ? 10 + (int)Priority
        : IsInEar ? 0
        : IsMain ? 1
        : 2 + (int)Priority;
}
