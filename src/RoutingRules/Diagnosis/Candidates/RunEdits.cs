using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Changes of routes and cables alike: both join runs of equal width.</summary>
internal sealed class RunEdits(ResolvedShow show, Hop hop)
{
    private readonly SignalGraph graph = show.Graph;

    /// <summary>An element with other ends of the same width; null when they do not lie in one group.</summary>
    public bool Move(PatchChange change, Element element, PointIndex from, PointIndex to)
    {
        if ((!from.IsNone && !IsRun(from, element.From, element.Width)) || !IsRun(to, element.To, element.Width))
        {
            return false;
        }

        var at = graph.Address(to, element.Width);
        if (hop == Hop.Route)
        {
            var route = show.Document.Patch.Routes[element.Index];
            change.Routes.Replaced[element.Index] = [route with { From = from.IsNone ? null : graph.Address(from, element.Width), To = at }];
        }
        else
        {
            change.Cables.Replaced[element.Index] = [show.Document.Rig.Cables[element.Index] with { From = graph.Address(from, element.Width), To = at }];
        }

        return true;
    }

    /// <summary>Takes an element out.</summary>
    public void Remove(PatchChange change, int index)
    {
        if (hop == Hop.Route)
        {
            change.Routes.Replaced[index] = [];
        }
        else
        {
            change.Cables.Replaced[index] = [];
        }
    }

    /// <summary>Gives sinks new sources: what claims them loses them, and new elements stand at the end.</summary>
    public PatchChange Set(PatchElements elements, SortedDictionary<PointIndex, PointIndex> sources)
    {
        var change = new PatchChange();
        foreach (var element in sources.Keys.SelectMany(elements.Claiming).ToHashSet())
        {
            var kept = RunCuts.Kept(element.Width, position => sources.ContainsKey(element.To + position))!;
            if (hop == Hop.Route)
            {
                var route = show.Document.Patch.Routes[element.Index];
                change.Routes.Replaced[element.Index] = kept.ConvertAll(part =>
                    route with
                    {
                        From = route.From is { } from ? RunCuts.Part(from, part.First, part.Width) : null,
                        To = RunCuts.Part(route.To, part.First, part.Width),
                    }
                );
            }
            else
            {
                var cable = show.Document.Rig.Cables[element.Index];
                change.Cables.Replaced[element.Index] = kept.ConvertAll(part =>
                    cable with
                    {
                        From = RunCuts.Part(cable.From, part.First, part.Width),
                        To = RunCuts.Part(cable.To, part.First, part.Width),
                    }
                );
            }
        }

        foreach (var (sink, source, width) in Runs(sources))
        {
            if (hop == Hop.Route)
            {
                change.Routes.Added.Add(new Route { From = source.IsNone ? null : graph.Address(source, width), To = graph.Address(sink, width) });
            }
            else if (!source.IsNone)
            {
                change.Cables.Added.Add(new Cable { From = graph.Address(source, width), To = graph.Address(sink, width) });
            }
        }

        return change;
    }

    /// <summary>Sinks next to one another whose sources are so too, as runs.</summary>
    public List<(PointIndex Sink, PointIndex Source, int Width)> Runs(SortedDictionary<PointIndex, PointIndex> sources)
    {
        var runs = new List<(PointIndex Sink, PointIndex Source, int Width)>();
        foreach (var (sink, source) in sources)
        {
            if (
                runs.Count > 0
                && runs[^1] is var (first, from, width)
                && Follows(first, sink, width)
                && (source.IsNone ? from.IsNone : Follows(from, source, width))
            )
            {
                runs[^1] = (first, from, width + 1);
            }
            else
            {
                runs.Add((sink, source, 1));
            }
        }

        return runs;
    }

    /// <summary>True when a point is so many places behind another of its group.</summary>
    public bool Follows(PointIndex first, PointIndex next, int width) => !first.IsNone && !next.IsNone && first + width == next && IsSameGroup(first, next);

    public bool IsSameGroup(PointIndex first, PointIndex second) =>
        graph.DeviceOf(first) == graph.DeviceOf(second) && graph.GroupOf(first) == graph.GroupOf(second);

    /// <summary>True when a run that starts at a point stays within the group of another point, or within the point's own when there is none.</summary>
    private bool IsRun(PointIndex first, PointIndex like, int width) =>
        first.Value >= 0
        && first.Value + width <= graph.PointCount
        && (like.IsNone || graph.GroupOf(first).Kind == graph.GroupOf(like).Kind)
        && IsSameGroup(first, first + (width - 1));
}
