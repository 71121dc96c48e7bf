using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Flow;

/// <content>What runs between devices.</content>
internal sealed partial class FlowBuilder
{
    /// <summary>How many bundles a drawing has at most, so that the first one stands under the cautions on a page of Letter.</summary>
    private const int MaxBundles = 7;

    /// <summary>Devices that send, the streams, links and cables between, and devices that take; what carries nothing is left out.</summary>
    public ValueList<SheetFlow> Overall(SheetSelection selection)
    {
        var bundles = Bundles()
            .Where(bundle => selection.IsAll || bundle.Runs.Any(run => selection.Has(run.From) || selection.Has(run.To)))
            .Chunk(MaxBundles)
            .ToArray();
        const string Title = "Between the devices";
        return bundles
            .Select((chunk, i) => Draw(chunk, bundles.Length == 1 ? Title : $"{Title}, {SheetWords.Number(i + 1)} of {SheetWords.Number(bundles.Length)}"))
            .ToValueList();
    }

    /// <summary>Streams in document order, then carrier links, then cables between each two devices.</summary>
    private List<FlowBundle> Bundles()
    {
        var bundles = new List<FlowBundle>();
        foreach (var kind in (ReadOnlySpan<HopKind>)[HopKind.Stream, HopKind.Carrier, HopKind.Cable])
        {
            var found = new SortedDictionary<(int, int), FlowBundle>();
            for (var i = 0; i < graph.PointCount; i++)
            {
                var to = new PointIndex(i);
                if (graph.Via(to) == kind && facts.Signal(to) is { } signal)
                {
                    var from = graph.Upstream(to);
                    var key = kind == HopKind.Cable ? (graph.DeviceOf(from).Index, graph.DeviceOf(to).Index) : (graph.ViaIndex(to), 0);
                    if (!found.TryGetValue(key, out var bundle))
                    {
                        found.Add(
                            key,
                            bundle = new FlowBundle
                            {
                                Name = Name(kind, to),
                                Note = kind == HopKind.Stream ? facts.Show.Streams[graph.ViaIndex(to)].Model.Label : null,
                            }
                        );
                    }

                    bundle.Runs.Add((from, to, DevicePages.Name(signal), facts.IsInEar(to, signal)));
                }
            }

            bundles.AddRange(found.Values);
        }

        return bundles;
    }

    private string Name(HopKind kind, PointIndex to) =>
        kind switch
        {
            HopKind.Stream => facts.Show.Streams[graph.ViaIndex(to)].Model.Id.Value,
            HopKind.Carrier => facts.Show.Links[graph.ViaIndex(to)].Model.Id.Value,
            _ => "cables",
        };

    private SheetFlow Draw(FlowBundle[] bundles, string title)
    {
        var nodes = new List<SheetFlowNode>();
        var edges = new List<SheetFlowEdge>();
        var known = new Dictionary<(int, int), int>();
        foreach (var bundle in bundles)
        {
            var names = bundle.Runs.Select(run => run.Name).Distinct(StringComparer.Ordinal);
            nodes.Add(
                new SheetFlowNode
                {
                    Column = 1,
                    Kind = SheetFlowKind.Bundle,
                    Frame = "",
                    Mark = bundle.Name,
                    Name = bundle.Note ?? "",
                    Note = string.Join(", ", names),
                    IsInEar = bundle.Runs.Any(run => run.IsInEar),
                }
            );
            var middle = nodes.Count - 1;
            foreach (var group in bundle.Runs.GroupBy(run => graph.DeviceOf(run.From).Index))
            {
                edges.Add(
                    new SheetFlowEdge
                    {
                        From = Device(0, group.Key),
                        To = middle,
                        Count = group.Select(run => run.From).Distinct().Count(),
                        IsInEar = group.Any(run => run.IsInEar),
                    }
                );
            }

            foreach (var group in bundle.Runs.GroupBy(run => graph.DeviceOf(run.To).Index))
            {
                edges.Add(
                    new SheetFlowEdge
                    {
                        From = middle,
                        To = Device(2, group.Key),
                        Count = group.Count(),
                        IsInEar = group.Any(run => run.IsInEar),
                    }
                );
            }
        }

        return new SheetFlow
        {
            Title = title,
            Nodes = nodes.ToValueList(),
            Edges = edges.ToValueList(),
        };

        int Device(int column, int index)
        {
            if (!known.TryGetValue((column, index), out var node))
            {
                var device = facts.Show.Devices[index];
                known.Add((column, index), node = nodes.Count);
                nodes.Add(
                    new SheetFlowNode
                    {
                        Column = column,
                        Kind = SheetFlowKind.Device,
                        Frame = "",
                        Mark = device.DisplayName,
                        Note = SheetWords.Zone(device.Zone, facts.View) ?? "",
                    }
                );
            }

            return node;
        }
    }
}
