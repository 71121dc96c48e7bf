using System.Globalization;
using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Looks for single changes that would place a demand, and tries each by assigning again.</summary>
internal sealed class RelaxationFinder(Reassigner again, AssignmentProblem problem, AssignmentResult result)
{
    private const int Most = 3;

    /// <summary>Each attempt gets this much search work at most.</summary>
    private const long AttemptBudget = 50_000;

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

            // Everything else stays if it can; what would move otherwise is told.
            if ((Try(unplaced, changed(ShowChanges.HoldAll(result.Show)), options) ?? Try(unplaced, changed(show), options)) is { } better)
            {
                found.Add(
                    new Relaxation
                    {
                        Kind = kind,
                        Subject = subject,
                        At = better.Placements.First(place => place.Demand == unplaced.Demand).At,
                        Moves = Moves(better, unplaced.Demand),
                    }
                );
            }
        }

        return found.ToValueList();
    }

    private AssignmentResult? Try(UnplacedDemand unplaced, Show changed, AssignmentOptions options)
    {
        var better = again.Assign(changed, options with { Budget = Math.Min(AttemptBudget, options.Budget) });
        return
            better is { Status: not AssignmentStatus.PinsContradict }
            && better.Unplaced.All(entry =>
                (entry.Demand != unplaced.Demand || entry.Sink != unplaced.Sink)
                && result.Unplaced.Any(known => known.Demand == entry.Demand && known.Sink == entry.Sink)
            )
            ? better
            : null;
    }

    private int Moves(AssignmentResult better, string demand)
    {
        var before = result.Placements.ToDictionary(place => place.Demand, place => place.At, StringComparer.Ordinal);
        return better.Placements.Count(place => place.Demand != demand && before.TryGetValue(place.Demand, out var at) && at != place.At);
    }

    private IEnumerable<(RelaxationKind Kind, string Subject, Func<Show, Show> Change, AssignmentOptions Options)> Changes(
        UnplacedDemand unplaced,
        DemandNode node
    )
    {
        foreach (var run in node.IsPinned ? [] : node.Allowed.Where(run => IsReserved(run, node.Width)))
        {
            var at = problem.Show.Graph.Address(run, node.Width);
            yield return (RelaxationKind.FreeReserved, at.ToString(), some => ShowChanges.Free(some, at), again.Options);
        }

        if (again.Options.Spares > 0)
        {
            var fewer = again.Options.Spares - 1;
            yield return (RelaxationKind.FewerSpares, fewer.ToString(CultureInfo.InvariantCulture), some => some, again.Options with { Spares = fewer });
        }

        foreach (var other in problem.Show.Demands)
        {
            if (other.IsHeld && !other.IsPinned && unplaced.Conflict.Contains(other.Key))
            {
                yield return (RelaxationKind.ReleaseHold, other.Key, some => ShowChanges.Release(some, other), again.Options);
            }
        }

        foreach (var other in problem.Show.Demands)
        {
            if (other.IsPinned && (other == node || unplaced.Conflict.Contains(other.Key)) && ShowChanges.Unpin(show, other) is not null)
            {
                yield return (RelaxationKind.DropPin, other.Key, some => ShowChanges.Unpin(some, other)!, again.Options);
            }
        }

        foreach (var zone in OtherZones(node))
        {
            yield return (RelaxationKind.AllowZone, zone.Value, some => ShowChanges.Allow(some, node, zone)!, again.Options);
        }
    }

    /// <summary>Zones that could take it and are not allowed: those declared near to the allowed ones first, then in document order.</summary>
    private IEnumerable<Id<Zone>> OtherZones(DemandNode node)
    {
        if (node.IsPinned)
        {
            return [];
        }

        var allowed = node
            .Allowed.Select(run => problem.Show.Graph.DeviceOf(run).Model.Zone)
            .OfType<Id<Zone>>()
            .Concat(node.Feed?.Model.To[node.Entry].Zones ?? node.Line!.Model.From.Zones)
            .ToHashSet();
        var near = show.Rig.Zones.Where(zone => allowed.Contains(zone.Id)).SelectMany(zone => zone.Near).ToHashSet();
        return show
            .Rig.Zones.Where(zone => !allowed.Contains(zone.Id) && HasSuitable(zone.Id, node))
            .OrderBy(zone => near.Contains(zone.Id) ? 0 : 1)
            .Select(zone => zone.Id);
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
    private bool HasSuitable(Id<Zone> zone, DemandNode node) =>
        problem.Show.Devices.Any(device =>
            device.Model.Zone == zone
            && device.Profile.Kind == DeviceKind.StageBox
            && device.Groups.Any(group => node.Line is { } line ? PossiblePlaces.Suits(group, line.Model) : group.IsLineOutput)
        );
}
