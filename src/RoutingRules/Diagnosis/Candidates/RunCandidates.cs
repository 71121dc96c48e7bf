using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of routes and of cables.</summary>
internal sealed class RunCandidates
{
    /// <summary>Up to so many steps each is also tried on its own.</summary>
    private const int FewSteps = 60;

    private readonly CandidateSearch search;
    private readonly SignalGraph graph;
    private readonly PatchElements elements;
    private readonly RunEdits edits;
    private readonly List<Step> steps;
    private readonly Hop hop;

    private RunCandidates(CandidateSearch search, Hop hop)
    {
        this.search = search;
        this.hop = hop;
        graph = search.Graph;
        elements = search.Elements;
        edits = new RunEdits(search.Show, hop);
        steps = search.Steps.Where(step => step.Hop == hop).ToList();
    }

    public static void Add(CandidateSearch search, Hop hop)
    {
        var candidates = new RunCandidates(search, hop);
        if (candidates.steps.Count == 0)
        {
            return;
        }

        candidates.AddRemovals(isConflict: true);
        candidates.AddExchanges();
        candidates.AddMoves();
        candidates.AddRemovals(isConflict: false);
        candidates.AddSettings();
    }

    /// <summary>Two elements, or the points of two, change their sources.</summary>
    private void AddExchanges()
    {
        var byOffset = new SortedDictionary<int, SortedDictionary<PointIndex, PointIndex>>();
        foreach (var step in steps)
        {
            if (elements.Claiming(step.At) is [var one, ..])
            {
                foreach (var other in elements.Feeding(step.Source))
                {
                    if (other.Hop == hop && other != one && other.Width == one.Width && !one.From.IsNone && one.From + Place(one, step.At) != step.Source)
                    {
                        Exchange(one, other);
                    }
                }
            }

            foreach (var next in graph.Fed(step.Source))
            {
                var sink = new PointIndex(next);
                var old = graph.Upstream(step.At);
                if (sink == step.At || old.IsNone || !IsChosen(sink) || graph.GroupOf(sink).Kind != graph.GroupOf(step.At).Kind || !May(old, sink))
                {
                    continue;
                }

                var pair = new SortedDictionary<PointIndex, PointIndex> { [step.At] = step.Source, [sink] = old };
                search.Add(RepairKind.Exchange, hop, 10, edits.Set(elements, pair));
                var offset = Math.Abs(sink.Value - step.At.Value);
                if (!byOffset.TryGetValue(offset, out var all))
                {
                    byOffset.Add(offset, all = []);
                }

                all.TryAdd(step.At, step.Source);
                all.TryAdd(sink, old);
            }
        }

        foreach (var all in byOffset.Values)
        {
            if (all.Count > 2)
            {
                search.Add(RepairKind.Exchange, hop, 10, edits.Set(elements, all));
            }
        }
    }

    private void Exchange(Element one, Element other)
    {
        var sources = new PatchChange();
        if (edits.Move(sources, one, other.From, one.To) && edits.Move(sources, other, one.From, other.To))
        {
            search.Add(RepairKind.Exchange, hop, 9, sources);
        }
    }

    /// <summary>Elements move by some places at either end; those that must move by the same number also together.</summary>
    private void AddMoves()
    {
        var sinks = new SortedDictionary<int, SortedDictionary<int, Element>>();
        var sources = new SortedDictionary<int, SortedDictionary<int, Element>>();
        foreach (var step in steps)
        {
            foreach (var element in elements.Feeding(step.Source))
            {
                if (element.Hop == hop && element.SinkOf(step.Source) is var sink && sink != step.At)
                {
                    Put(sinks, step.At.Value - sink.Value, element);
                }
            }

            foreach (var element in elements.Claiming(step.At))
            {
                if (!element.From.IsNone && element.SourceOf(step.At) is var source && source != step.Source)
                {
                    Put(sources, step.Source.Value - source.Value, element);
                }
            }
        }

        foreach (var (distance, moved) in sinks)
        {
            Move(
                moved,
                distance,
                (element, change) =>
                    Shifted(element.To, distance) is { IsNone: false } to && edits.IsSameGroup(to, element.To) && edits.Move(change, element, element.From, to)
            );
        }

        foreach (var (distance, moved) in sources)
        {
            Move(
                moved,
                distance,
                (element, change) =>
                    Shifted(element.From, distance) is { IsNone: false } from
                    && edits.IsSameGroup(from, element.From)
                    && edits.Move(change, element, from, element.To)
            );
        }
    }

    private void Move(SortedDictionary<int, Element> moved, int distance, Func<Element, PatchChange, bool> move)
    {
        var all = new PatchChange();
        var count = 0;
        foreach (var element in moved.Values)
        {
            var one = new PatchChange();
            if (move(element, one))
            {
                search.Add(element.Width == 1 ? RepairKind.Repoint : RepairKind.Shift, hop, 11, one, distance);
                move(element, all);
                count++;
            }
        }

        if (count > 1)
        {
            search.Add(RepairKind.Shift, hop, 12, all, distance);
        }
    }

    /// <summary>What hides a good source goes: a later claim, or what the device does by itself.</summary>
    private void AddRemovals(bool isConflict)
    {
        var all = new PatchChange();
        foreach (var step in steps)
        {
            var claims = elements.Claiming(step.At);
            if (isConflict ? claims.Count > 1 && Claimed(claims[1], step) : claims.Count == 1 && graph.FactorySource(step.At) == step.Source)
            {
                var change = new PatchChange();
                edits.Remove(change, claims[0].Index);
                edits.Remove(all, claims[0].Index);
                search.Add(RepairKind.Remove, hop, 10, change);
            }
        }

        search.Add(RepairKind.Remove, hop, 11, all);
    }

    private static bool Claimed(Element claim, Step step) => !claim.From.IsNone && claim.SourceOf(step.At) == step.Source;

    /// <summary>Points get their sources one by one, in runs, and in runs with gaps.</summary>
    private void AddSettings()
    {
        var byOffset = new SortedDictionary<(int Offset, int Group), SortedDictionary<PointIndex, PointIndex>>();
        foreach (var step in steps)
        {
            var offset = (step.Source.Value - step.At.Value, graph.DeviceOf(step.At).First(graph.GroupOf(step.At)).Value);
            if (!byOffset.TryGetValue(offset, out var all))
            {
                byOffset.Add(offset, all = []);
            }

            all[step.At] = step.Source;
        }

        foreach (var all in byOffset.Values)
        {
            var runs = edits.Runs(all);
            foreach (var (sink, source, width) in runs)
            {
                Set(sink, source, width);
                for (var i = 0; width > 1 && i < width && steps.Count <= FewSteps; i++)
                {
                    Set(sink + i, source + i, 1);
                }
            }

            if (runs.Count > 1)
            {
                Set(all, 14 + runs.Count);
            }
        }
    }

    private void Set(PointIndex sink, PointIndex source, int width)
    {
        var set = new SortedDictionary<PointIndex, PointIndex>();
        for (var i = 0; i < width; i++)
        {
            set.Add(sink + i, source + i);
        }

        Set(set, 12);
    }

    private void Set(SortedDictionary<PointIndex, PointIndex> set, int cost)
    {
        var isNew = set.Keys.All(sink => elements.Claiming(sink).Count == 0 || graph.Via(sink) == HopKind.Cleared);
        search.Add(isNew ? RepairKind.Complete : RepairKind.Repoint, hop, isNew ? cost : cost + 2, edits.Set(elements, set));
    }

    private static int Place(Element element, PointIndex sink) => sink.Value - element.To.Value;

    private PointIndex Shifted(PointIndex point, int distance) =>
        point.Value + distance < 0 || point.Value + distance >= graph.PointCount ? PointIndex.None : new PointIndex(point.Value + distance);

    private bool IsChosen(PointIndex sink) =>
        graph.FixedSource(sink) is null && (hop == Hop.Cable ? graph.Via(sink) == HopKind.Cable : graph.Via(sink) is HopKind.Route or HopKind.Factory);

    private bool May(PointIndex source, PointIndex sink) =>
        hop == Hop.Cable
            ? graph.DeviceOf(source) != graph.DeviceOf(sink)
            : graph.DeviceOf(source) == graph.DeviceOf(sink) && graph.RoutingBetween(source, sink) is { Mode: not RoutingMode.Fixed };

    private static void Put(SortedDictionary<int, SortedDictionary<int, Element>> table, int distance, Element element)
    {
        if (!table.TryGetValue(distance, out var moved))
        {
            table.Add(distance, moved = []);
        }

        moved[element.Index] = element;
    }
}
