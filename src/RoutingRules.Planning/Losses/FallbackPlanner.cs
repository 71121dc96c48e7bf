using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Plans what to do after a loss: assigns again without what is lost, everything that goes on held where it is.</summary>
/// <remarks>
/// First at places the document allows. What finds none there and can be plugged elsewhere, because what it plays through or comes from is whole, may then go
/// to
/// any free point of a device like the one it was at, of a stage box or of a console. What is left over then takes the place of a feed of lower priority, which
/// the plan says. Every plan is carried out on a copy of the show and traced there.
/// </remarks>
internal sealed class FallbackPlanner
{
    private readonly FallbackSearch search;
    private readonly FallbackProof proof;
    private readonly FailureModel model;
    private readonly ResolvedShow show;
    private readonly ImpactOptions options;
    private readonly Dictionary<string, int> rankOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FallbackPlan> plans = new(StringComparer.Ordinal);

    public FallbackPlanner(ShowAssigner assigner, FailureModel model, ImpactOptions options, CancellationToken cancellation)
    {
        this.model = model;
        this.options = options;
        show = model.Show;
        var ears = new FallbackEars(show);
        search = new FallbackSearch(assigner, show, ears, options, cancellation);
        proof = new FallbackProof(assigner, model, ears, cancellation);
        foreach (var demand in show.Demands)
        {
            rankOf.TryAdd(demand.Key, model.Subjects[demand.Feed?.Index ?? show.Feeds.Count + demand.Line!.Index].Rank);
        }
    }

    /// <summary>The plan after a loss that silences some deliveries; null when it silences none.</summary>
    public FallbackPlan? Plan(LossSet lost, HashSet<int> silenced)
    {
        if (silenced.Count == 0)
        {
            return null;
        }

        // A supply of one device is lost as the device is. A lost cable of a lost device is not named to an assignment, but its far end may not be plugged
        // elsewhere.
        var task = new FallbackTask(model, lost, silenced, rankOf);
        var key = string.Join(' ', task.Without.Concat(show.Cables.Where(cable => lost.Cables[cable.Index]).Select(cable => $"to {cable.Model.To}")));
        if (!plans.TryGetValue(key, out var plan))
        {
            plans.Add(key, plan = Make(task));
        }

        return plan;
    }

    private FallbackPlan Make(FallbackTask task)
    {
        var hopeless = task.Demands.Where(task.IsHopeless).Select(demand => demand.Key).ToHashSet(StringComparer.Ordinal);
        if (hopeless.Count == task.Demands.Count)
        {
            return new FallbackPlan
            {
                Steps = [],
                Recovered = [],
                Unrecovered = task.Nothing(
                    null,
                    task.Demands.SelectMany(task.SilencedOf).Concat(task.Beyond).Select(delivery => task.Unrecovered(delivery, ""))
                ),
            };
        }

        var attempt = search.Attempt(task, hopeless);
        var late = task.Demands.Where(demand => attempt.IsMoved(demand)).Skip(options.Moves).Select(demand => demand.Key).ToHashSet(StringComparer.Ordinal);
        if (late.Count > 0)
        {
            attempt = search.Attempt(task, [.. hopeless, .. late]);
            task.Demands.Where(demand => late.Contains(demand.Key)).ToList().ForEach(attempt.Defer);
        }

        return proof.Verify(task, attempt);
    }
}
