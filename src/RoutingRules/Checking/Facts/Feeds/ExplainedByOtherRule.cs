using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Pinned destinations that are missed for a reason that a rule of its own reports, so that the rules about single feeds leave them out.</summary>
internal sealed class ExplainedByOtherRule(RuleContext context)
{
    private readonly Intentions intentions = Intentions.Of(context);
    private readonly EarFeeds ears = EarFeeds.Of(context);
    private Displacements? displaced;

    /// <summary>The one that all rules of a run share.</summary>
    public static ExplainedByOtherRule Of(RuleContext context) => context.Shared(static asking => new ExplainedByOtherRule(asking));

    /// <summary>
    /// True when a displaced run, a doubled in-ear pin, forbidden content, danger to somebody's ears or another listener's mix explains why the pin is not
    /// served.
    /// </summary>
    public bool IsTold(DemandNode demand) =>
        demand is { Feed: not null, IsPinned: true, Existing.IsNone: true }
        && (
            (demand.Allowed.Count > 0 && (IsDisplaced(demand) || ears.IsShared(demand) || !ForbiddenContent.At(context, intentions, demand).IsNone))
            || EarMixes.Of(context).IsTold(demand)
            || !ears.DangerAt(demand, out _).IsNone
            || !ears.MisplacedAt(demand).IsNone
        );

    private bool IsDisplaced(DemandNode demand)
    {
        displaced ??= Displacements.OfFeeds(context);
        for (var position = 0; position < demand.Width; position++)
        {
            if (!displaced.IsMember(demand.Allowed[0] + position))
            {
                return false;
            }
        }

        return true;
    }
}
