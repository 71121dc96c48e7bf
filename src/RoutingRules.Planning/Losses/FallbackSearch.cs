using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Looks for places after a loss, by assigning again.</summary>
internal sealed class FallbackSearch(ShowAssigner assigner, ResolvedShow show, FallbackEars ears, ImpactOptions options, CancellationToken cancellation)
{
    private const long Budget = 5_000;

    /// <summary>How many devices are tried for what the document allows no place for.</summary>
    private const int Rounds = 2;

    /// <summary>How many feeds of lower priority are asked to give up their place for one, and how often in all that may come to nothing in one plan.</summary>
    private const int MaxYielding = 2;

    private readonly ShowAssigner bare = assigner.WithoutRules();
    private readonly List<string> unserved = [.. show.Demands.Where(demand => demand.Existing.IsNone).Select(demand => demand.Key)];

    /// <summary>What can be placed again, first where the document allows it, then elsewhere, then where something less important is.</summary>
    /// <param name="task">What is lost and silenced.</param>
    /// <param name="leftOut">Demands not to look for.</param>
    public FallbackAttempt Attempt(FallbackTask task, HashSet<string> leftOut)
    {
        var usual = options.Assignment ?? new AssignmentOptions();
        var wanted = usual with
        {
            Without = usual.Without.Concat(task.Without).ToValueList(),
            LeaveOut = usual.LeaveOut.Concat(unserved).Concat(leftOut).Distinct().ToValueList(),
            Avoid = usual.Avoid.Concat(task.Demands.SelectMany(ears.Forbidden)).ToValueList(),
            KeepUnlisted = true,
            ExplainUnplaced = false,
            Spares = 0,
            Headroom = 0,
            Budget = Math.Min(usual.Budget, Budget),
        };
        var shows = new FallbackShows(task, show);
        var attempt = new FallbackAttempt(show);
        if (task.Demands.Exists(demand => !leftOut.Contains(demand.Key) && task.HasAllowedPlace(demand)))
        {
            attempt.Take(bare.Assign(shows.Wanted(), wanted, cancellation), false, wanted.LeaveOut);
        }

        var moved = task.Demands.Count(attempt.IsMoved);
        var places = new FallbackPlaces(show, task);
        var tried = new HashSet<DemandNode>();
        var movable = task.Demands.Where(demand => !leftOut.Contains(demand.Key) && task.CanMove(demand)).ToList();
        for (var round = 0; round < Rounds && moved < options.Moves; round++)
        {
            var rest = movable.Where(demand => !attempt.IsPlaced(demand)).ToList();
            var (widened, avoid, asked) = places.Widen(shows.Settled(attempt), rest, round, options.Moves - moved);
            if (asked.Count == 0)
            {
                continue;
            }

            var others = task.Demands.Where(demand => !attempt.IsPlaced(demand) && !asked.Contains(demand)).Select(demand => demand.Key);
            var wider = wanted with { Avoid = wanted.Avoid.Concat(avoid).ToValueList(), LeaveOut = wanted.LeaveOut.Concat(others).Distinct().ToValueList() };
            attempt.Take(bare.Assign(widened, wider, cancellation), true, wider.LeaveOut);
            moved = task.Demands.Count(attempt.IsMoved);
            tried.UnionWith(asked);
        }

        var vain = 0;
        foreach (var demand in movable.Where(demand => !attempt.IsPlaced(demand)))
        {
            if (moved >= options.Moves)
            {
                break;
            }

            var yielding = places.Yielding(demand).Where(other => !attempt.IsDisplaced(other)).ToList();
            if (vain < MaxYielding && Displace(task, shows, attempt, yielding, wanted, demand))
            {
                moved++;
                continue;
            }

            vain += yielding.Count > 0 ? 1 : 0;
            if (!tried.Contains(demand))
            {
                attempt.Refuse(demand, places.Reason(demand, yielding.Count > 0));
            }
        }

        foreach (var demand in movable.Where(demand => moved >= options.Moves && !attempt.IsPlaced(demand)))
        {
            attempt.Defer(demand);
        }

        return attempt;
    }

    /// <summary>Puts a demand where a feed of lower priority is, which falls silent there; false when that helps nothing.</summary>
    private bool Displace(
        FallbackTask task,
        FallbackShows shows,
        FallbackAttempt attempt,
        List<DemandNode> yielding,
        AssignmentOptions wanted,
        DemandNode demand
    )
    {
        foreach (var other in yielding.Take(MaxYielding))
        {
            var at = show.Graph.Address(other.Existing, other.Width);
            var document = ShowChanges.Pin(FallbackPlaces.Unseparated(shows.Settled(attempt)), demand, at);
            var without = task
                .Demands.Where(rest => rest != demand && !attempt.IsPlaced(rest))
                .Concat(attempt.Displaced.Select(entry => entry.Demand))
                .Append(other)
                .Select(rest => rest.Key);
            var narrowed = wanted with { LeaveOut = wanted.LeaveOut.Concat(without).Distinct().ToValueList() };
            var result = bare.Assign(document, narrowed, cancellation);
            if (
                result.Unplaced.All(unplaced => narrowed.LeaveOut.Contains(unplaced.Demand))
                && result.Placements.Any(placement => placement.Demand == demand.Key && placement.At == at)
            )
            {
                attempt.Displace(other, demand);
                attempt.Take(result, true, narrowed.LeaveOut);
                return true;
            }
        }

        return false;
    }
}
