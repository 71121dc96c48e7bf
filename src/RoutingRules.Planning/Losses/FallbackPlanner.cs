using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Existing;

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
    private const long Budget = 5_000;

    /// <summary>How many devices are tried for what the document allows no place for.</summary>
    private const int Rounds = 2;

    /// <summary>How many feeds of lower priority are asked to give up their place for one, and how often in all that may come to nothing in one plan.</summary>
    private const int MostYielding = 2;

    /// <summary>Rules that say only that something does not arrive, which the plan tells by itself: not delivered, fan-out lost, line not patched.</summary>
    private static readonly string[] DeliveryRules = ["RR3001", "RR3003", "RR6001"];

    private readonly ShowAssigner assigner;
    private readonly ShowAssigner bare;
    private readonly FailureModel model;
    private readonly ResolvedShow show;
    private readonly FallbackEars ears;
    private readonly ImpactOptions options;
    private readonly CancellationToken cancellation;
    private readonly Dictionary<string, int> rankOf = new(StringComparer.Ordinal);
    private readonly List<string> unserved;
    private readonly Dictionary<string, FallbackPlan> plans = new(StringComparer.Ordinal);
    private HashSet<string>? knownErrors;

    public FallbackPlanner(ShowAssigner assigner, FailureModel model, ImpactOptions options, CancellationToken cancellation)
    {
        this.assigner = assigner;
        this.model = model;
        this.options = options;
        this.cancellation = cancellation;
        bare = assigner.WithoutRules();
        show = model.Show;
        ears = new FallbackEars(show);
        unserved = [.. show.Demands.Where(demand => demand.Existing.IsNone).Select(demand => demand.Key)];
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

        var attempt = Attempt(task, hopeless);
        var late = task.Demands.Where(demand => attempt.IsMoved(demand)).Skip(options.Moves).Select(demand => demand.Key).ToHashSet(StringComparer.Ordinal);
        if (late.Count > 0)
        {
            attempt = Attempt(task, [.. hopeless, .. late]);
            task.Demands.Where(demand => late.Contains(demand.Key)).ToList().ForEach(attempt.Defer);
        }

        return Verify(task, attempt);
    }

    private FallbackAttempt Attempt(FallbackTask task, HashSet<string> leftOut)
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
        var attempt = new FallbackAttempt(show);
        if (task.Demands.Exists(demand => !leftOut.Contains(demand.Key) && task.HasAllowedPlace(demand)))
        {
            attempt.Take(bare.Assign(task.Wanted(show.Document), wanted, cancellation), false, wanted.LeaveOut);
        }

        var moved = task.Demands.Count(attempt.IsMoved);
        var places = new FallbackPlaces(show, task);
        var tried = new HashSet<DemandNode>();
        var movable = task.Demands.Where(demand => !leftOut.Contains(demand.Key) && task.CanMove(demand)).ToList();
        for (var round = 0; round < Rounds && moved < options.Moves; round++)
        {
            var rest = movable.Where(demand => !attempt.IsPlaced(demand)).ToList();
            var (widened, avoid, asked) = places.Widen(task.Settled(attempt), rest, round, options.Moves - moved);
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
            if (vain < MostYielding && Displace(task, attempt, yielding, wanted, demand))
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
    private bool Displace(FallbackTask task, FallbackAttempt attempt, List<DemandNode> yielding, AssignmentOptions wanted, DemandNode demand)
    {
        foreach (var other in yielding.Take(MostYielding))
        {
            var at = show.Graph.Address(other.Existing, other.Width);
            var document = ShowChanges.Pin(FallbackPlaces.Unseparated(task.Settled(attempt)), demand, at);
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

    private FallbackPlan Verify(FallbackTask task, FallbackAttempt attempt)
    {
        var steps = FallbackWriter.Write(model.Show, assigner.Resolve(attempt.Document), task, attempt);
        var done = FallbackSteps.Apply(show.Document, steps);
        var simulation = new FailureModel(assigner.Resolve(done));
        var lost = simulation.NewSet();
        task.Lost.Devices.CopyTo(lost.Devices, 0);
        task.Lost.Links.CopyTo(lost.Links, 0);
        lost.Points.AddRange(task.Lost.Points);
        foreach (var cable in simulation.Show.Cables)
        {
            // Steps may have split and moved cables; what was lost of them is told by the end that stays.
            lost.Cables[cable.Index] = show.Cables.Any(old => task.Lost.Cables[old.Index] && Holds(old.Model.To, cable.Model.To));
        }

        var recovered = new List<RecoveredDemand>();
        var unrecovered = new List<UnrecoveredDemand>();
        foreach (var demand in task.Demands)
        {
            var to = attempt.PlaceOf(demand);
            var isBack = false;
            foreach (var delivery in task.SilencedOf(demand))
            {
                var isHere = to is { } place && FallbackTrace.Arrives(simulation, lost, task, delivery, place, steps);
                isBack |= isHere;
                if (!isHere)
                {
                    unrecovered.Add(task.Unrecovered(delivery, Reason(attempt, demand)));
                }
            }

            if (isBack)
            {
                recovered.Add(
                    new RecoveredDemand
                    {
                        Demand = demand.Key,
                        From = show.Graph.Address(demand.Existing, demand.Width),
                        To = to!.Value,
                    }
                );
            }
        }

        unrecovered.AddRange(task.Beyond.Select(delivery => task.Unrecovered(delivery, "")));
        var harm =
            Broken(task, attempt, simulation, lost) is { } broken ? $"disturb '{broken}', which goes on"
            : ears.Unsafe(simulation.Show) is { } danger ? $"bring {danger} into somebody's ears"
            : null;
        return harm is not null || recovered.Count == 0
            ? new FallbackPlan
            {
                Steps = [],
                Recovered = [],
                Unrecovered = task.Nothing(harm, unrecovered),
            }
            : new FallbackPlan
            {
                Steps = steps,
                Recovered = recovered.ToValueList(),
                Unrecovered = unrecovered.ToValueList(),
                Displaced = Displaced(attempt),
                NewErrors = NewErrors(Settled(done, attempt)),
            };
    }

    private string Reason(FallbackAttempt attempt, DemandNode demand) =>
        attempt.IsPlaced(demand) || ears.Forbidden(demand).Count == 0
            ? attempt.Reason(demand)
            : $"{attempt.Reason(demand)} {FallbackEars.Reason(demand.Feed!)}";

    private ValueList<DisplacedDemand> Displaced(FallbackAttempt attempt) =>
        attempt
            .Displaced.Select(entry => new DisplacedDemand
            {
                Demand = entry.Demand.Key,
                At = show.Graph.Address(entry.Demand.Existing, entry.Demand.Width),
                By = entry.By.Key,
            })
            .ToValueList();

    private static bool Holds(PointRange range, PointRange part) =>
        range.Device == part.Device && range.Group == part.Group && part.First >= range.First && part.Last <= range.Last;

    /// <summary>The first demand that went on before the steps and does not after them; null when there is none.</summary>
    private string? Broken(FallbackTask task, FallbackAttempt attempt, FailureModel simulation, LossSet lost)
    {
        for (var i = 0; i < model.Deliveries.Count; i++)
        {
            var delivery = model.Deliveries[i];
            if (task.IsSilenced(i) || attempt.IsDisplaced(delivery.Demand))
            {
                continue;
            }

            for (var position = 0; position < delivery.Demand.Width; position++)
            {
                if (
                    attempt.IsMoved(delivery.Demand)
                    || !simulation.Sounds(delivery.Ends[position], lost)
                    || !ExistingPlacements.IsFedBy(simulation.Show.Graph, delivery.Ends[position], (delivery.Source + position).Value)
                )
                {
                    return delivery.Demand.DisplayName;
                }
            }
        }

        return null;
    }

    /// <summary>The show after the steps with what was plugged elsewhere wanted there.</summary>
    private Show Settled(Show done, FallbackAttempt attempt)
    {
        var resolved = assigner.Resolve(done);
        foreach (var demand in show.Demands)
        {
            if (
                attempt.IsMoved(demand)
                && attempt.PlaceOf(demand) is { } place
                && resolved.Graph.Find(place, out var run) == ConnectionState.Connected
                && resolved.Demands[demand.Index].Existing != run
            )
            {
                done = ShowChanges.Pin(done, demand, place);
            }
        }

        return done;
    }

    private ValueList<string> NewErrors(Show done)
    {
        knownErrors ??= [.. Errors(show.Document).Select(finding => finding.Message)];
        return Errors(done).Select(finding => finding.Message).Where(message => !knownErrors.Contains(message)).ToValueList();
    }

    private IEnumerable<Finding> Errors(Show document) =>
        assigner.Check(document, cancellation).Findings.Where(finding => finding.Severity == Severity.Error && !DeliveryRules.Contains(finding.Rule));
}
