using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Goes through all places a demand does not have and gathers those with the same cause.</summary>
internal sealed class RefusalList(AlternativeProbe probe, AssignmentOptions options)
{
    /// <summary>Free places that are tried one by one.</summary>
    private const int MostTried = 64;

    private readonly AssignmentProblem problem = probe.Problem;
    private readonly SignalGraph graph = probe.Problem.Show.Graph;

    /// <summary>The best of the free places, should the demand have to go; none when there is none.</summary>
    public (int First, ObjectiveVector? Objective) Best { get; private set; } = (-1, null);

    /// <summary>The refusals of a demand that is not pinned, in the order of the causes.</summary>
    public ValueList<Refusal> Of(DemandNode node)
    {
        Best = (-1, null);
        var demand = problem.Demands[node.Index];
        var groups = new SortedDictionary<(RefusalCause Cause, int Number), List<Found>>();
        var tried = 0;
        foreach (var run in node.Allowed)
        {
            if (run.Value == probe.At(node.Index))
            {
                continue;
            }

            var found = Judge(demand, run, ref tried);
            var key = (found.Cause, found.Difference?.Number ?? -1);
            if (!groups.TryGetValue(key, out var group))
            {
                groups.Add(key, group = []);
            }

            group.Add(found);
        }

        return groups.Select(group => Join(node, group.Key.Cause, group.Value)).Concat(OtherDevices(node)).ToValueList();
    }

    private Found Judge(Demand demand, PointIndex run, ref int tried)
    {
        for (var position = 0; position < demand.Node.Width; position++)
        {
            var mark = problem.Show.MarkOf(run + position);
            if (mark is not null || problem.IsExcludedPoint[run.Value + position])
            {
                return new Found(
                    run.Value,
                    mark is null ? RefusalCause.Excluded
                        : mark.IsDead ? RefusalCause.Dead
                        : RefusalCause.Reserved
                )
                {
                    Reason = mark?.Reason,
                };
            }
        }

        if (probe.Occupants(demand.Index, run.Value, demand.Node.Width) is { Count: > 0 } occupants)
        {
            return new Found(run.Value, RefusalCause.Taken) { By = occupants };
        }

        if (problem.Given.Owners(demand, run.Value).Select(owner => owner.Index).ToList() is { Count: > 0 } owners)
        {
            return new Found(run.Value, RefusalCause.Taken) { By = owners };
        }

        if (probe.Score is not { } score || ++tried > MostTried)
        {
            return new Found(run.Value, RefusalCause.NotLookedAt);
        }

        var (cause, objective) = probe.Judge(demand, run.Value);
        if (objective is null)
        {
            return new Found(run.Value, cause) { Links = cause == RefusalCause.LinkFull ? probe.FullLinks(demand, run.Value) : [] };
        }

        if (Best.Objective is null || objective.CompareTo(Best.Objective, options.Order) < 0)
        {
            Best = (run.Value, objective);
        }

        var difference = ObjectiveDifference.Between(score, objective, options.Order);
        return difference is { By: > 0 }
            ? new Found(run.Value, cause) { Difference = difference }
            : new Found(run.Value, difference is null ? RefusalCause.EquallyGood : RefusalCause.SearchEnded);
    }

    private Refusal Join(DemandNode node, RefusalCause cause, List<Found> found) =>
        new()
        {
            Cause = cause,
            Points = PointRuns.Of(graph, found.SelectMany(item => Enumerable.Range(item.First, node.Width))),
            By = found.SelectMany(item => item.By).Distinct().Select(index => problem.Demands[index].Node.Key).ToValueList(),
            Links = found.SelectMany(item => item.Links).Distinct().ToValueList(),
            Reasons = found.Select(item => item.Reason).OfType<string>().Distinct().ToValueList(),
            Difference = cause == RefusalCause.Worse ? found.Select(item => item.Difference!).MinBy(difference => difference.By) : null,
        };

    /// <summary>Devices with points of the right direction none of which is allowed, because of where they stand or what they are.</summary>
    private IEnumerable<Refusal> OtherDevices(DemandNode node)
    {
        var allowed = new HashSet<int>(node.Allowed.Select(run => graph.DeviceOf(run).Index));
        var elsewhere = new List<Id<Device>>();
        var wrong = new List<Id<Device>>();
        foreach (var device in problem.Show.Devices)
        {
            var isNamed = IsNamed(node, device);
            var wanted = node.Line is null ? PortKind.Output : PortKind.Input;
            var suits = device.Groups.Any(group =>
                group.Count > 0
                && (
                    isNamed ? group.Kind == wanted
                    : node.Line is { } line ? PossiblePlaces.Suits(group, line.Model)
                    : group.IsLineOutput
                )
            );
            if (suits && !allowed.Contains(device.Index))
            {
                (isNamed ? wrong : elsewhere).Add(device.Id);
            }
        }

        if (elsewhere.Count > 0)
        {
            yield return new Refusal { Cause = RefusalCause.NotAllowed, Devices = elsewhere.ToValueList() };
        }

        if (wrong.Count > 0)
        {
            yield return new Refusal { Cause = RefusalCause.WrongKind, Devices = wrong.ToValueList() };
        }
    }

    private static bool IsNamed(DemandNode node, DeviceNode device)
    {
        var to = node.Feed?.Model.To[node.Entry];
        var devices = to?.Devices ?? node.Line!.Model.From.Devices;
        var zones = to?.Zones ?? node.Line!.Model.From.Zones;
        return devices.Contains(device.Id) || (device.Model.Zone is { } zone && zones.Contains(zone));
    }

    private sealed record Found(int First, RefusalCause Cause)
    {
        public List<int> By { get; init; } = [];

        public ValueList<LinkUse> Links { get; init; }

        public string? Reason { get; init; }

        public ObjectiveDifference? Difference { get; init; }
    }
}
