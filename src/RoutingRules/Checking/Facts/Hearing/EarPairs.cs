using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>
/// In-ear pairs whose halves do not get to the left and the right side of one pack, found at the ears and not at the output that serves them.
/// </summary>
internal sealed class EarPairs
{
    private readonly RuleContext context;
    private readonly HashSet<DemandNode> told = [];

    private EarPairs(RuleContext context)
    {
        this.context = context;
        var ears = EarFeeds.Of(context);
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; feed.Width == 2 && entry < feed.Model.To.Count && ears.IsInEar(feed); entry++)
            {
                var demand = context.Demand(feed, entry);
                if (!demand.Existing.IsNone && context.Ears.Contains(demand.Existing) && context.Ears.Contains(demand.Existing + 1))
                {
                    Judged++;
                    Find(demand);
                }
            }
        }
    }

    /// <summary>How a pair arrives at the ears.</summary>
    public enum FaultKind
    {
        /// <summary>Left at the right side and right at the left side of one pack.</summary>
        Crossed,

        /// <summary>In the right order, but from the right side of one pack to the left side of the next.</summary>
        OneOff,

        /// <summary>At points that do not belong together.</summary>
        Apart,
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static EarPairs Of(RuleContext context) => context.Shared(static asking => new EarPairs(asking));

    /// <summary>How many placed pairs end in ears.</summary>
    public int Judged { get; private set; }

    /// <summary>The faults, with the points where left and right arrive.</summary>
    public List<(FaultKind Kind, DemandNode Demand, PointIndex Left, PointIndex Right)> Faults { get; } = [];

    /// <summary>True for a demand that is told here.</summary>
    public bool IsTold(DemandNode demand) => told.Contains(demand);

    private void Find(DemandNode demand)
    {
        var lefts = context.Ears.Behind(demand.Existing);
        var rights = context.Ears.Behind(demand.Existing + 1);
        foreach (var left in lefts)
        {
            var isRightSide = IsLeftSide(left) == false;
            if (!isRightSide && AreNeighbours(left, left + 1) && rights.Contains(left + 1))
            {
                continue;
            }

            if (AreNeighbours(left + -1, left) && rights.Contains(left + -1) && IsLeftSide(left + -1) != false)
            {
                Add(FaultKind.Crossed, demand, left, left + -1);
            }
            else if (isRightSide && AreNeighbours(left, left + 1) && rights.Contains(left + 1))
            {
                Add(FaultKind.OneOff, demand, left, left + 1);
            }
            else if (rights.Find(right => context.DeviceOf(right) == context.DeviceOf(left) && !lefts.Contains(right + -1)) is { IsNone: false } apart)
            {
                Add(FaultKind.Apart, demand, left, apart);
            }
        }
    }

    private void Add(FaultKind kind, DemandNode demand, PointIndex left, PointIndex right)
    {
        told.Add(demand);
        Faults.Add((kind, demand, left, right));
    }

    /// <summary>
    /// Whether a point is the left side of a pack: by what the panel prints, else by its number where the hardware pairs; null when neither says.
    /// </summary>
    private bool? IsLeftSide(PointIndex end)
    {
        var group = context.GroupOf(end);
        var number = context.NumberOf(end);
        var mark = group.Model.PanelLabels.Count >= number ? group.Model.PanelLabels[number - 1] : "";
        return mark.EndsWith('L') ? true
            : mark.EndsWith('R') ? false
            : group.IsPaired ? number % 2 == 1
            : null;
    }

    private bool AreNeighbours(PointIndex first, PointIndex second) =>
        !first.IsNone
        && second.Value < context.PointCount
        && context.DeviceOf(first) == context.DeviceOf(second)
        && context.GroupOf(first) == context.GroupOf(second);
}
