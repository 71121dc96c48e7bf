using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Answers;

/// <summary>Looks for single changes that would place a demand, and tries each by assigning again.</summary>
internal sealed class RelaxationFinder(Reassigner again, AssignmentProblem problem, AssignmentResult result)
{
    private const int Most = 3;

    /// <summary>Each attempt gets this much search work at most.</summary>
    private const long AttemptBudget = 100_000;

    private readonly Show show = again.Show;

    /// <summary>The changes that help, those that ask the least of people first: reserved points, spares, holds, pins, zones.</summary>
    public ValueList<Relaxation> Find(UnplacedDemand unplaced)
    {
        var node = problem.Demands.First(demand => demand.Node.Key == unplaced.Demand).Node;
        var found = new List<Relaxation>();
        foreach (var (kind, subject, changed, options) in Changes(unplaced, node))
        {
            if (found.Count == Most || again.IsSpent)
            {
                break;
            }

            // One helpful point or zone says enough; the next kind of change tells more.
            if (found.Exists(known => known.Kind == kind && kind is RelaxationKind.FreeReserved or RelaxationKind.AllowZone))
            {
                continue;
            }

            if (Try(unplaced, changed, options) is { } better)
            {
                found.Add(new Relaxation
                {
                    Kind = kind,
                    Subject = subject,
                    At = better.Placements.First(place => place.Demand == unplaced.Demand).At,
                    Moves = Moves(better, unplaced.Demand),
                });
            }
        }

        return found.ToValueList();
    }

    private AssignmentResult? Try(UnplacedDemand unplaced, Show changed, AssignmentOptions options)
    {
        var better = again.Assign(changed, options with { Budget = Math.Min(AttemptBudget, options.Budget) });
        return better is { Status: not AssignmentStatus.PinsContradict }
            && better.Unplaced.All(entry => (entry.Demand != unplaced.Demand || entry.Sink != unplaced.Sink)
                && result.Unplaced.Any(known => known.Demand == entry.Demand && known.Sink == entry.Sink))
            ? better
            : null;
    }

    private int Moves(AssignmentResult better, string demand)
    {
        var before = result.Placements.ToDictionary(place => place.Demand, place => place.At, StringComparer.Ordinal);
        return better.Placements.Count(place => place.Demand != demand && before.TryGetValue(place.Demand, out var at) && at != place.At);
    }

    private IEnumerable<(RelaxationKind Kind, string Subject, Show Show, AssignmentOptions Options)> Changes(UnplacedDemand unplaced, DemandNode node)
    {
        foreach (var run in node.IsPinned ? [] : node.Allowed.Where(run => IsReserved(run, node.Width)))
        {
            var at = problem.Show.Graph.Address(run, node.Width);
            yield return (RelaxationKind.FreeReserved, at.ToString(), ShowChanges.Free(show, at), again.Options);
        }

        if (again.Options.Spares > 0)
        {
            var fewer = again.Options.Spares - 1;
            yield return (RelaxationKind.FewerSpares, fewer.ToString(CultureInfo.InvariantCulture), show, again.Options with { Spares = fewer });
        }

        foreach (var other in problem.Show.Demands)
        {
            if (other.IsHeld && !other.IsPinned && unplaced.Conflict.Contains(other.Key))
            {
                yield return (RelaxationKind.ReleaseHold, other.Key, ShowChanges.Release(show, other), again.Options);
            }
        }

        foreach (var other in problem.Show.Demands)
        {
            if (other.IsPinned && (other == node || unplaced.Conflict.Contains(other.Key)) && ShowChanges.Unpin(show, other) is { } changed)
            {
                yield return (RelaxationKind.DropPin, other.Key, changed, again.Options);
            }
        }

        foreach (var zone in show.Rig.Zones.Where(zone => !node.IsPinned && HasSuitable(zone.Id, node)))
        {
            if (ShowChanges.Allow(show, node, zone.Id) is { } changed)
            {
                yield return (RelaxationKind.AllowZone, zone.Id.Value, changed, again.Options);
            }
        }
    }

    private bool IsReserved(PointIndex run, int width)
    {
        var isReserved = false;
        for (var position = 0; position < width; position++)
        {
            var mark = problem.Show.MarkOf(run + position);
            if (mark is { IsDead: true } || problem.IsExcludedPoint[run.Value + position])
            {
                return false;
            }

            isReserved |= mark is not null;
        }

        return isReserved;
    }

    /// <summary>A zone whose devices are there to be plugged into: consoles have outputs too, but not where the loudspeakers are.</summary>
    private bool HasSuitable(Id<Zone> zone, DemandNode node) => problem.Show.Devices.Any(device =>
        device.Model.Zone == zone && device.Profile.Kind == DeviceKind.StageBox
        && device.Groups.Any(group => node.Line is { } line ? DemandBuilder.Suits(group, line.Model) : group.IsLineOutput));
}
