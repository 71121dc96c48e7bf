using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>Turns ways of signals into places and edges; what several ways share is drawn once.</summary>
internal sealed class FlowDrawing
{
    /// <summary>From so many columns on, boxes are so narrow that names go under the marks.</summary>
    private const int ManyColumns = 3;

    private readonly SheetFacts facts;
    private readonly FlowPath[] ways;
    private readonly List<SheetFlowNode> nodes = [];
    private readonly List<(int From, int To, bool IsInEar)> edges = [];
    private readonly Dictionary<(int Point, int Exit), int> known = [];
    private readonly List<int> ends = [];
    private readonly List<int> numbers = [];

    public FlowDrawing(SheetFacts facts, FlowPath[] ways)
    {
        this.facts = facts;
        this.ways = ways;
    }

    public SheetFlow Draw(string title)
    {
        foreach (var way in ways)
        {
            Add(way);
        }

        Spread();
        SortByNumber();
        return new SheetFlow
        {
            Title = title,
            Nodes = nodes.ToValueList(),
            Edges = edges
                .GroupBy(edge => (edge.From, edge.To))
                .Select(group => new SheetFlowEdge
                {
                    From = group.Key.From,
                    To = group.Key.To,
                    IsInEar = group.Any(edge => edge.IsInEar),
                })
                .ToValueList(),
        };
    }

    private void Add(FlowPath way)
    {
        var graph = facts.Graph;
        var last = Node(way, way.Points[0], PointIndex.None, SheetFlowKind.Source);
        for (var i = 1; i < way.Points.Count; i++)
        {
            var point = way.Points[i];
            var kind = graph.GroupOf(point).Kind;
            if (graph.Via(point) is HopKind.Stream or HopKind.Carrier)
            {
                last = Join(last, Node(way, point, PointIndex.None, SheetFlowKind.Slot), way);
            }

            if (kind == PortKind.Sink || (facts.Wanted(point).Count > 0 && kind is PortKind.Receive or PortKind.Transmit))
            {
                last = Join(
                    last,
                    Node(way, point, PointIndex.None, kind == PortKind.Sink && IsLast(way, i) ? SheetFlowKind.Channel : SheetFlowKind.Connector),
                    way
                );
            }
            else if (kind is PortKind.Output or PortKind.Input && !(graph.Via(point) == HopKind.Cable && IsLast(way, i)))
            {
                var exit = Exit(way, i);
                last = Join(last, Node(way, point, exit < 0 ? PointIndex.None : way.Points[exit], SheetFlowKind.Connector), way);
                i = Math.Max(i, exit);
            }
        }

        if (graph.Via(way.Points[^1]) == HopKind.Cable && way.Points.Count > 1)
        {
            var cable = facts.Way(way.Points[^1]);
            var far = $"{facts.Place(way.Points[^1])}{(cable is null ? "" : $" ({cable})")}";
            nodes[last] = nodes[last] with { Note = nodes[last].Note.Length > 0 ? $"{nodes[last].Note}, {far}" : $"\u2192 {far}" };
        }

        if (!ends.Contains(last))
        {
            ends.Add(last);
        }
    }

    private static bool IsLast(FlowPath way, int position) => position == way.Points.Count - 1;

    /// <summary>
    /// Where a way leaves a device that it entered by an input, when it leaves by an output; -1 when it does not. The two are drawn as one place.
    /// </summary>
    private int Exit(FlowPath way, int entry)
    {
        var graph = facts.Graph;
        var device = graph.DeviceOf(way.Points[entry]);
        for (var i = entry + 1; graph.GroupOf(way.Points[entry]).Kind == PortKind.Input && i < way.Points.Count && graph.DeviceOf(way.Points[i]) == device; i++)
        {
            if (graph.GroupOf(way.Points[i]).Kind == PortKind.Output)
            {
                return i;
            }
        }

        return -1;
    }

    private int Join(int from, int to, FlowPath way)
    {
        if (from != to)
        {
            edges.Add((from, to, way.IsInEar));
        }

        return to;
    }

    /// <param name="way">The way that comes by.</param>
    /// <param name="point">The point; for a slot the one it arrives at.</param>
    /// <param name="exit">The output by which the way leaves the same device; none when the place is the point alone.</param>
    /// <param name="kind">What it is.</param>
    private int Node(FlowPath way, PointIndex point, PointIndex exit, SheetFlowKind kind)
    {
        var isSlot = kind == SheetFlowKind.Slot;
        var key = (
            isSlot ? facts.Graph.Upstream(point).Value : point.Value,
            isSlot ? -1 - facts.Graph.ViaIndex(point)
            : exit.IsNone ? 0
            : exit.Value + 1
        );
        if (known.TryGetValue(key, out var index))
        {
            if (way.IsInEar)
            {
                nodes[index] = nodes[index] with { IsInEar = true };
            }

            return index;
        }

        known.Add(key, nodes.Count);
        numbers.Add(key.Item1);
        var place = facts.Place(point);
        nodes.Add(
            new SheetFlowNode
            {
                Column = 0,
                Kind = kind,
                Frame = isSlot ? SlotFrame(point) : place.DeviceLabel,
                Mark =
                    isSlot ? SlotMark(point)
                    : exit.IsNone ? Mark(place)
                    : $"{Mark(place)} \u203a {Mark(facts.Place(exit))}",
                Name = isSlot ? "" : Name(point, way),
                Note = facts.Graph.Via(point) == HopKind.Cable && facts.Way(point) is { } cable ? $"({cable})" : "",
                IsInEar = way.IsInEar,
            }
        );
        return nodes.Count - 1;
    }

    private static string Mark(SheetPlace place) => $"{(place.Group.Value == "channel" ? "ch" : place.Group.Value)} {place.Mark}";

    private string Name(PointIndex point, FlowPath way) => facts.Signal(point) is { Names.Count: > 0 } signal ? DevicePages.Name(signal) : way.Name;

    private string SlotFrame(PointIndex point) =>
        facts.Graph.Via(point) == HopKind.Stream
            ? facts.Show.Streams[facts.Graph.ViaIndex(point)].Model.Id.Value
            : facts.Show.Links[facts.Graph.ViaIndex(point)].Model.Id.Value;

    private string SlotMark(PointIndex point) =>
        facts.Graph.Via(point) == HopKind.Stream
            ? $"ch {SheetWords.Number(facts.Graph.Upstream(point).Value - facts.Show.Streams[facts.Graph.ViaIndex(point)].From.Value + 1)}"
            : $"ch {SheetWords.Number(facts.Graph.NumberOf(facts.Graph.Upstream(point)))}";

    /// <summary>Each place one column after the last of those that feed it; ends in the last column.</summary>
    private void Spread()
    {
        var columns = new int[nodes.Count];
        for (var pass = 0; pass < nodes.Count; pass++)
        {
            var isStill = true;
            foreach (var (from, to, _) in edges)
            {
                if (columns[to] <= columns[from])
                {
                    columns[to] = columns[from] + 1;
                    isStill = false;
                }
            }

            if (isStill)
            {
                break;
            }
        }

        var last = columns.DefaultIfEmpty(0).Max();
        for (var i = 0; i < nodes.Count; i++)
        {
            var isEnd = ends.Contains(i) && edges.All(edge => edge.From != i);
            var column = isEnd ? Math.Max(last, 1) : columns[i];
            nodes[i] =
                last < ManyColumns || nodes[i].Name.Length == 0
                    ? nodes[i] with
                    {
                        Column = column,
                    }
                    : nodes[i] with
                    {
                        Column = column,
                        Name = "",
                        Note = $"{nodes[i].Name} {nodes[i].Note}".TrimEnd(),
                    };
        }
    }

    /// <summary>Places of one frame in the order of their numbers, frames in the order in which the ways met them.</summary>
    private void SortByNumber()
    {
        var frames = nodes.Select(node => node.Frame).Distinct(StringComparer.Ordinal).ToList();
        var order = Enumerable.Range(0, nodes.Count).OrderBy(i => frames.IndexOf(nodes[i].Frame)).ThenBy(i => numbers[i]).ThenBy(i => i).ToArray();
        var placeOf = new int[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            placeOf[order[i]] = i;
        }

        var sorted = order.Select(i => nodes[i]).ToArray();
        nodes.Clear();
        nodes.AddRange(sorted);
        for (var i = 0; i < edges.Count; i++)
        {
            edges[i] = (placeOf[edges[i].From], placeOf[edges[i].To], edges[i].IsInEar);
        }
    }
}
