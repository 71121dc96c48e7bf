using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Pinned destinations that are missed for a reason that a rule of its own reports, so that the rules about single feeds leave them out.</summary>
internal sealed class ToldElsewhere(RuleContext context)
{
    private readonly Intentions intentions = Intentions.Of(context);
    private Displacements? displaced;
    private Dictionary<int, (bool IsEar, bool IsOther)>? places;

    /// <summary>The one that all rules of a run share.</summary>
    public static ToldElsewhere Of(RuleContext context) => context.Shared(static asking => new ToldElsewhere(asking));

    /// <summary>True when a displaced run, a doubled in-ear pin or forbidden content explains why the pin is not served.</summary>
    public bool IsTold(DemandNode demand) =>
        demand is { Feed: not null, IsPinned: true, Existing.IsNone: true, Allowed.Count: > 0 }
        && (IsDisplaced(demand)
            || IsSharedEar(demand)
            || !ForbiddenContent.At(context, intentions, demand).IsNone
            || !EarSources.At(context, intentions, demand, out _).IsNone);

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

    private bool IsSharedEar(DemandNode demand)
    {
        places ??= Places();
        for (var position = 0; position < demand.Width; position++)
        {
            if (places.GetValueOrDefault(demand.Allowed[0].Value + position) is (true, true))
            {
                return true;
            }
        }

        return false;
    }

    private Dictionary<int, (bool IsEar, bool IsOther)> Places()
    {
        var found = new Dictionary<int, (bool IsEar, bool IsOther)>();
        foreach (var (point, feed) in InEarShared.Places(context))
        {
            var isEar = feed.Model.Role == FeedRole.InEar;
            var known = found.GetValueOrDefault(point.Value);
            found[point.Value] = (known.IsEar || isEar, known.IsOther || !isEar);
        }

        return found;
    }
}
