using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Planning.Losses;

/// <summary>Carries a plan out on a copy of the show and says only what is then traced there.</summary>
internal sealed class FallbackProof(ShowAssigner assigner, FailureModel model, FallbackEars ears, CancellationToken cancellation)
{
    /// <summary>Rules that say only that something does not arrive, which the plan tells by itself: not delivered, fan-out lost, line not patched.</summary>
    private static readonly string[] DeliveryRules = ["RR3001", "RR3003", "RR6001"];

    private readonly ResolvedShow show = model.Show;
    private HashSet<string>? knownErrors;

    /// <summary>The plan that an attempt comes to; one that brings nothing back, or harms, has no steps.</summary>
    public FallbackPlan Verify(FallbackTask task, FallbackAttempt attempt)
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
        knownErrors ??= [.. Errors(show.Document).Select(finding => finding.Fingerprint())];
        return Errors(done).Where(finding => !knownErrors.Contains(finding.Fingerprint())).Select(finding => finding.Message).ToValueList();
    }

    private IEnumerable<Finding> Errors(Show document) =>
        assigner.Check(document, cancellation).Findings.Where(finding => finding.Severity == Severity.Error && !DeliveryRules.Contains(finding.Rule));
}
