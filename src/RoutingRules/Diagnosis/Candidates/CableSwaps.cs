using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Exchanges two plugs behind the outputs that a finding about sides or ears names: what is patched is right, what is plugged is not.</summary>
internal static class CableSwaps
{
    private const int Most = 16;

    private static readonly HashSet<string> Rules = ["RR2004", "RR3008", "RR9003", "RR9004", "RR9005", "RR9006"];

    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding) => Rules.Contains(finding.Rule) ? Swaps(show, finding).Take(Most) : [];

    private static IEnumerable<OtherRepair> Swaps(ResolvedShow show, Finding finding)
    {
        var inputs = Inputs(show, finding);
        var edits = new RunEdits(show, Hop.Cable);
        var elements = new PatchElements(show);
        foreach (var one in inputs)
        {
            foreach (var other in All(show).OrderBy(other => !inputs.Contains(other)))
            {
                if (one == other || (inputs.Contains(other) && other < one) || show.Graph.Upstream(one) == show.Graph.Upstream(other))
                {
                    continue;
                }

                var sources = new SortedDictionary<PointIndex, PointIndex> { [one] = show.Graph.Upstream(other), [other] = show.Graph.Upstream(one) };
                yield return new OtherRepair(
                    $"The cables to {Name(show, one)} and {Name(show, other)} are exchanged",
                    Fix.Of(
                        $"Plug {Plug(show, sources, one)} and {Plug(show, sources, other)}",
                        FixSafety.Unsafe,
                        edits.Set(elements, sources).Edits(show.Document),
                        CauseWords.Caution
                    )
                );
            }
        }
    }

    private static string Plug(ResolvedShow show, SortedDictionary<PointIndex, PointIndex> sources, PointIndex input) =>
        $"{show.Graph.Address(sources[input])} to {show.Graph.Address(input)}";

    /// <summary>What an input is called in the words of causes.</summary>
    public static string Name(ResolvedShow show, PointIndex input) => $"{show.Graph.DeviceOf(input).DisplayName} ({show.Graph.Address(input)})";

    /// <summary>The cabled inputs on the paths of the points and feeds that a finding names.</summary>
    private static SortedSet<PointIndex> Inputs(ResolvedShow show, Finding finding)
    {
        var found = new SortedSet<PointIndex>();
        foreach (var entity in finding.Entities)
        {
            if (PointRange.TryParse(entity.Id, out var run, out _) && show.Graph.Find(run, out var first) == ConnectionState.Connected)
            {
                for (var i = 0; i < run.Width; i++)
                {
                    Add(first + i);
                }
            }

            foreach (var demand in show.Demands.Where(demand => demand.Feed?.Model.Id.Value == entity.Id && !demand.Existing.IsNone))
            {
                for (var i = 0; i < demand.Width; i++)
                {
                    Add(demand.Existing + i);
                }
            }
        }

        return found;

        void Add(PointIndex point)
        {
            foreach (var passed in show.Graph.Upward(point))
            {
                if (show.Graph.Via(passed) == HopKind.Cable)
                {
                    found.Add(passed);
                }
            }

            foreach (var next in show.Graph.Downward(point))
            {
                if (show.Graph.Via(next) == HopKind.Cable)
                {
                    found.Add(next);
                }
            }
        }
    }

    private static IEnumerable<PointIndex> All(ResolvedShow show)
    {
        foreach (var cable in show.Cables)
        {
            for (var i = 0; cable.State == ConnectionState.Connected && i < cable.Model.To.Width; i++)
            {
                if (show.Graph.Via(cable.To + i) == HopKind.Cable)
                {
                    yield return cable.To + i;
                }
            }
        }
    }
}
