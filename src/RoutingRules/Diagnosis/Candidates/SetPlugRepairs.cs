using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Plugs the parts of a set alike: one part gets the plug that corresponds to that of the other.</summary>
internal static class SetPlugRepairs
{
    private const int Most = 4;

    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        var outputs = finding.Rule == "RR3020" ? Outputs(show.Graph, finding) : [];
        if (outputs is not [var one, var other])
        {
            return [];
        }

        var (plug, counterpart) = (Plug(show.Graph, one), Plug(show.Graph, other));
        return plug.IsNone ? Missing(show, one, other, counterpart)
            : counterpart.IsNone ? Missing(show, other, one, plug)
            : show.Graph.DeviceOf(plug) == show.Graph.DeviceOf(counterpart) ? [Exchange(show, plug, counterpart, false)]
            :
            [
                .. Whole(show, plug, counterpart, false),
                .. Whole(show, counterpart, plug, true),
                Move(show, plug, counterpart, false),
                Move(show, counterpart, plug, true),
            ];
    }

    private static List<PointIndex> Outputs(SignalGraph graph, Finding finding)
    {
        var found = new List<PointIndex>();
        foreach (var entity in finding.Entities)
        {
            if (entity.Role == "output" && PointRange.TryParse(entity.Id, out var run, out _) && graph.Find(run, out var first) == ConnectionState.Connected)
            {
                found.Add(first);
            }
        }

        return found;
    }

    private static PointIndex Plug(SignalGraph graph, PointIndex output)
    {
        foreach (var next in graph.Fed(output))
        {
            if (graph.Via(new PointIndex(next)) == HopKind.Cable)
            {
                return new PointIndex(next);
            }
        }

        return PointIndex.None;
    }

    /// <summary>A cable from a bare output: beside the plug of the other part, or in one like it, those without any plug and in the same zone first.</summary>
    private static IEnumerable<OtherRepair> Missing(ResolvedShow show, PointIndex bare, PointIndex other, PointIndex plug)
    {
        var graph = show.Graph;
        var edits = new RunEdits(show, Hop.Cable);
        var inputs = new List<PointIndex>();
        if (graph.DeviceOf(bare) == graph.DeviceOf(other))
        {
            var beside = plug + (bare.Value - other.Value);
            if (beside.Value >= 0 && beside.Value < graph.PointCount && edits.IsSameGroup(plug, beside))
            {
                inputs.Add(beside);
            }
        }
        else
        {
            var zone = graph.DeviceOf(bare).Zone;
            inputs.AddRange(
                show.Devices.Where(device => device != graph.DeviceOf(plug) && device.Profile.Id == graph.DeviceOf(plug).Profile.Id)
                    .OrderBy(device => device.Zone == zone ? 0 : 1)
                    .ThenBy(device => device.Index)
                    .Select(device => device.First(device.Groups[graph.GroupOf(plug).Index]) + (graph.NumberOf(plug) - 1))
            );
        }

        foreach (var input in inputs.Where(input => graph.Upstream(input).IsNone).Take(Most))
        {
            var (from, to) = (graph.Address(bare), graph.Address(input));
            var change = new PatchChange();
            change.Cables.Added.Add(new Cable { From = graph.Address(bare, 1), To = graph.Address(input, 1) });
            yield return new OtherRepair(
                $"The cable from {from} to {to} is missing",
                Fix.Of($"Plug {from} to {to}", FixSafety.Unsafe, change.Edits(show.Document), CauseWords.Caution)
            );
        }
    }

    /// <summary>The whole cable goes to the numbers at which that of the other part is, where those are free.</summary>
    private static IEnumerable<OtherRepair> Whole(ResolvedShow show, PointIndex plug, PointIndex like, bool isAsLikely)
    {
        var graph = show.Graph;
        var elements = new PatchElements(show);
        var cable = elements.Claiming(plug)[0];
        var to = cable.To + (graph.NumberOf(like) - graph.NumberOf(plug));
        var change = new PatchChange();
        if (
            cable.Width > 1
            && Enumerable.Range(0, cable.Width).All(i => to.Value + i < graph.PointCount && elements.Claiming(to + i).All(claim => claim == cable))
            && new RunEdits(show, Hop.Cable).Move(change, cable, cable.From, to)
        )
        {
            var (from, before, after) = (graph.Address(cable.From, cable.Width), graph.Address(cable.To, cable.Width), graph.Address(to, cable.Width));
            yield return new OtherRepair(
                $"The cable from {from} is in {before} instead of {after}",
                Fix.Of($"Plug {from} to {after}", FixSafety.Unsafe, change.Edits(show.Document), CauseWords.Caution),
                isAsLikely
            );
        }
    }

    /// <summary>A plug goes to the number at which that of the other part is, and takes the place of what is there.</summary>
    private static OtherRepair Move(ResolvedShow show, PointIndex plug, PointIndex like, bool isAsLikely)
    {
        var graph = show.Graph;
        var input = plug + (graph.NumberOf(like) - graph.NumberOf(plug));
        if (!graph.Upstream(input).IsNone)
        {
            return Exchange(show, plug, input, isAsLikely);
        }

        var output = graph.Upstream(plug);
        return new OtherRepair(
            $"The cable from {graph.Address(output)} is in {graph.Address(plug)} instead of {graph.Address(input)}",
            Plugged(show, $"Plug {graph.Address(output)} to {graph.Address(input)}", new() { [plug] = PointIndex.None, [input] = output }),
            isAsLikely
        );
    }

    private static OtherRepair Exchange(ResolvedShow show, PointIndex one, PointIndex other, bool isAsLikely)
    {
        var graph = show.Graph;
        var (first, second) = (graph.Upstream(one), graph.Upstream(other));
        return new OtherRepair(
            $"The cables to {CableSwaps.Name(show, one)} and {CableSwaps.Name(show, other)} are exchanged",
            Plugged(
                show,
                $"Plug {graph.Address(second)} to {graph.Address(one)} and {graph.Address(first)} to {graph.Address(other)}",
                new() { [one] = second, [other] = first }
            ),
            isAsLikely
        );
    }

    private static Fix Plugged(ResolvedShow show, string title, SortedDictionary<PointIndex, PointIndex> sources) =>
        Fix.Of(title, FixSafety.Unsafe, new RunEdits(show, Hop.Cable).Set(new PatchElements(show), sources).Edits(show.Document), CauseWords.Caution);
}
