using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>Finds what to draw: the ways of all signals that feeds or lines name, and what runs between devices.</summary>
internal sealed partial class FlowBuilder
{
    /// <summary>How many ends a drawing has at most: channels are one line high, connectors often three or four.</summary>
    private const int MaxChannels = 18;
    private const int MaxConnectors = 12;

    private readonly SheetFacts facts;
    private readonly SignalGraph graph;
    private readonly List<FlowPath> ways = [];

    public FlowBuilder(SheetFacts facts)
    {
        this.facts = facts;
        graph = facts.Graph;
        var isDrawn = new bool[graph.PointCount];
        var leaves = Enumerable
            .Range(0, graph.PointCount)
            .Select(i => new PointIndex(i))
            .Where(point => graph.Fed(point).IsEmpty && !graph.Upstream(point).IsNone)
            .ToArray();
        foreach (var end in leaves.Where(IsEnd))
        {
            Add(facts.Chain(end), isDrawn);
        }

        // What ends in network slots that nobody takes is drawn up to its last connector, unless a way to elsewhere passes there.
        foreach (var end in leaves.Where(end => !IsEnd(end)))
        {
            var points = facts.Chain(end);
            points.RemoveRange(0, Math.Max(0, points.FindIndex(point => IsEnd(point) && !graph.Upstream(point).IsNone)));
            if (IsEnd(points[0]) && !isDrawn[points[0].Value])
            {
                Add(points, isDrawn);
            }
        }
    }

    private void Add(List<PointIndex> chain, bool[] isDrawn)
    {
        var end = chain[0];
        if (facts.Signal(end) is not { Names.Count: > 0 } signal)
        {
            return;
        }

        foreach (var point in chain)
        {
            isDrawn[point.Value] = true;
        }

        chain.Reverse();
        ways.Add(
            new FlowPath
            {
                Points = chain,
                Name = DevicePages.Name(signal),
                IsInEar = facts.IsInEar(end, signal),
            }
        );
    }

    /// <summary>The signals that start, pass or end at a device: first those that end at connectors, then those that end at channels.</summary>
    public ValueList<SheetFlow> Of(DeviceNode device)
    {
        var here = ways.Where(way => way.Points.Any(point => graph.DeviceOf(point) == device)).ToArray();
        return
        [
            .. Draw("From source to connector", here.Where(way => !EndsInside(way)), MaxConnectors),
            .. Draw("From source to channel", here.Where(EndsInside), MaxChannels),
        ];
    }

    private bool IsEnd(PointIndex point) => graph.GroupOf(point).Kind is PortKind.Output or PortKind.Input or PortKind.Sink || facts.Wanted(point).Count > 0;

    private bool EndsInside(FlowPath way) => graph.GroupOf(way.Points[^1]).Kind == PortKind.Sink;

    /// <summary>
    /// One drawing for each so many ends, in the order of devices and numbers; ways through further devices apart, as they need more columns.
    /// </summary>
    private IEnumerable<SheetFlow> Draw(string title, IEnumerable<FlowPath> all, int most)
    {
        var sorted = all.OrderBy(way => Last(way).Value).ThenBy(way => way.Points[^1].Value).ToArray();
        var chunks = Chunks(sorted.Where(way => !IsLong(way)), most).Concat(Chunks(sorted.Where(IsLong), most)).ToArray();
        for (var i = 0; i < chunks.Length; i++)
        {
            yield return new FlowDrawing(facts, chunks[i]).Draw(
                chunks.Length == 1 ? title : $"{title}, {SheetWords.Number(i + 1)} of {SheetWords.Number(chunks.Length)}"
            );
        }
    }

    /// <summary>As few chunks as possible, all about equally long.</summary>
    private static IEnumerable<FlowPath[]> Chunks(IEnumerable<FlowPath> ways, int most)
    {
        var all = ways.ToArray();
        var count = (all.Length + most - 1) / most;
        return count == 0 ? [] : all.Chunk((all.Length + count - 1) / count);
    }

    /// <summary>True when a cable leads on before the end.</summary>
    private bool IsLong(FlowPath way) => way.Points.SkipLast(1).Any(point => graph.Via(point) == HopKind.Cable);

    /// <summary>The last place drawn: the output when the way ends behind its cable.</summary>
    private PointIndex Last(FlowPath way) => way.Points.Count > 1 && graph.Via(way.Points[^1]) == HopKind.Cable ? way.Points[^2] : way.Points[^1];
}
