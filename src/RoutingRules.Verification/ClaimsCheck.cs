using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Compares what a result says about itself with what its patch does.</summary>
internal static class ClaimsCheck
{
    /// <summary>Every claim that does not hold.</summary>
    public static IEnumerable<string> Problems(AssignmentFacts facts, AssignmentResult result, VerificationResult verified)
    {
        if (result.Objective != verified.Vector)
            yield return $"The result says its numbers are {Text(result.Objective)}; counted from its patch they are {Text(verified.Vector)}.";

        if ((result.Status == AssignmentStatus.PinsContradict) != (result.Contradictions.Count > 0))
            yield return "The status and the list of contradicting pins do not agree.";

        var at = new Dictionary<string, Placement>(StringComparer.Ordinal);
        foreach (var placement in result.Placements.ToArray())
            at.TryAdd(placement.Demand, placement);

        foreach (var demand in facts.Demands)
        {
            if (!at.TryGetValue(demand.Key, out var placement))
                continue;

            if (placement.IsPinned != demand.IsPinned)
                yield return $"{demand.Key} is said {(placement.IsPinned ? "" : "not ")}to be pinned.";

            if (placement.IsKept != (demand.Existing == placement.At))
                yield return $"{demand.Key} is said {(placement.IsKept ? "" : "not ")}to stay where it was.";
        }

        var moved = facts
            .Demands.Where(demand => demand.Existing is { } old && (!at.TryGetValue(demand.Key, out var now) || now.At != old))
            .Select(demand => demand.Key);
        var left = result.Show.Patch.Streams.Select(stream => stream.Id).ToHashSet();
        var removed = facts.Input.Patch.Streams.Select(stream => stream.Id).Where(id => !left.Contains(id)).Distinct();
        var after = new PatchTrace(facts.Rig, result.Show.Patch);
        foreach (
            var problem in (string?[])
                [
                    Differs("moved demands", result.Moved, moved),
                    Differs("removed streams", result.RemovedStreams, removed),
                    Differs("removed receivers", result.RemovedReceivers, RemovedReceivers(facts, after)),
                    Differs(
                        "silenced outputs",
                        result.Silenced,
                        Points(facts, PortKind.Output).Where(point => facts.Before.Source(point) is not null && after.Source(point) is null)
                    ),
                    Differs("cleared channels", result.Cleared, Cleared(facts, after, at.ContainsKey)),
                ]
        )
        {
            if (problem is not null)
                yield return problem;
        }
    }

    private static IEnumerable<RemovedReceiver> RemovedReceivers(AssignmentFacts facts, PatchTrace after)
    {
        var streams = facts.Input.Patch.Streams;
        for (var i = 0; i < streams.Count; i++)
        {
            foreach (var at in streams[i].To.Select(receiver => receiver.At))
            {
                var first = 0;
                for (var number = at.First; number <= at.Last + 1; number++)
                {
                    var hasLeft =
                        number <= at.Last
                        && facts.Before.Listens(at[number - at.First]) is { } step
                        && step.Stream == i
                        && after.Listens(at[number - at.First]) is null;
                    if (hasLeft && first == 0)
                        first = number;

                    if (!hasLeft && first > 0)
                    {
                        yield return new RemovedReceiver { Stream = streams[i].Id, At = new PointRange(at.Device, at.Group, first, number - 1) };
                        first = 0;
                    }
                }
            }
        }
    }

    private static IEnumerable<Point> Cleared(AssignmentFacts facts, PatchTrace after, Func<string, bool> isPlaced)
    {
        var named = facts
            .Demands.Where(demand => isPlaced(demand.Key))
            .SelectMany(demand => demand.Line?.To ?? default)
            .SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i]))
            .ToHashSet();
        return Points(facts, PortKind.Sink)
            .Where(point => !named.Contains(point) && facts.Rig.Device(point.Device)!.IsKind(DeviceKind.Console))
            .Where(point => facts.Before.Upstream(point) is not null && after.Upstream(point) is null);
    }

    private static IEnumerable<Point> Points(AssignmentFacts facts, PortKind kind) =>
        facts
            .Rig.Devices.SelectMany(device => device.Groups)
            .Where(group => group.Kind == kind)
            .SelectMany(group => Enumerable.Range(1, group.Count).Select(group.At));

    private static string? Differs<T>(string what, ValueList<T> said, IEnumerable<T> found)
    {
        var list = found.ToValueList();
        return said == list ? null : $"The result lists as {what} {said}; they are {list}.";
    }

    private static string Text(ObjectiveVector? vector) => vector?.ToString() ?? "none";
}
