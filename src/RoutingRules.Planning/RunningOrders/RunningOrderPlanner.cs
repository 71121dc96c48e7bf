using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Planning.Comparing;
using RoutingRules.Rules;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Plans a running order: a show for each act, and the changeovers between them.</summary>
internal static class RunningOrderPlanner
{
    private const int MaxRounds = 3;

    public static RunningOrderPlan Plan(ShowAssigner assigner, RunningOrder order, AssignmentOptions options, CancellationToken cancellation)
    {
        var acts = new List<ActPlan>();
        foreach (var act in order.Acts)
        {
            acts.Add(PlanAct(assigner, order, act, acts.Count == 0 ? null : acts[^1].Show, options, cancellation));
        }

        var changeovers = new List<RunningOrderChangeover>();
        var wearers = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 1; i < acts.Count; i++)
        {
            var shows = ShowComparer.Of(assigner.Checker, acts[i - 1].Show, acts[i].Show);
            changeovers.Add(
                new RunningOrderChangeover
                {
                    From = acts[i - 1].Act,
                    To = acts[i].Act,
                    Comparison = shows.Compare(assigner.Checker, cancellation),
                    Plan = ChangeoverPlanner.Plan(assigner.Checker, shows, order.Pace, wearers, cancellation),
                }
            );
            foreach (var feed in acts[i - 1].Show.Feeds.Where(feed => !string.IsNullOrEmpty(feed.Pack)))
            {
                wearers[feed.Pack!] = PackMoves.Wearer(feed);
            }
        }

        return new RunningOrderPlan
        {
            Run = order,
            Acts = acts.ToValueList(),
            Changeovers = changeovers.ToValueList(),
            CommonFindings = Common(acts),
            RunFindings = RunningOrderFindings.Of(order, changeovers),
            Kit = KitCounter.Count(acts),
            Grid = FestivalGrid.Of([.. acts.Select(act => assigner.Resolve(act.Show))]),
        };
    }

    private static ActPlan PlanAct(ShowAssigner assigner, RunningOrder order, Act act, Show? before, AssignmentOptions options, CancellationToken cancellation)
    {
        var patch = before?.Patch ?? order.Patch;
        var show = ActComposer.Compose(order, act, patch);
        if (act.Patch is not null)
        {
            return new ActPlan
            {
                Act = act,
                Show = show,
                IsAssigned = false,
                Check = assigner.Check(show, cancellation),
            };
        }

        show = before is null ? show : StayingLines.Keep(assigner.Resolve(before), show);
        var result = assigner.Assign(show, options, cancellation);
        for (var round = 0; round < MaxRounds && !result.Unplaced.IsEmpty; round++)
        {
            // Streams of the act before can stand in the way of the first plan; the second begins without them.
            var again = assigner.Assign(result.Show, options, cancellation);
            if (again.Unplaced.Count >= result.Unplaced.Count)
            {
                break;
            }

            result = again;
        }

        var set = ActSettings.Apply(assigner.Resolve(result.Show), patch.Inputs);
        return new ActPlan
        {
            Act = act,
            Show = set,
            IsAssigned = true,
            Check = assigner.Check(set, cancellation),
            Unplaced = result.Unplaced,
        };
    }

    private static ValueList<Finding> Common(List<ActPlan> acts)
    {
        if (acts.Count < 2)
        {
            return default;
        }

        var common = acts.Select(act => act.Check.Findings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal))
            .Aggregate(
                (all, next) =>
                {
                    all.IntersectWith(next);
                    return all;
                }
            );
        return acts[0].Check.Findings.Where(finding => common.Contains(finding.Fingerprint())).ToValueList();
    }
}
