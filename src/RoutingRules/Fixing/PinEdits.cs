using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Writes what stands as points: where a feed or a line may be anywhere in a zone or at a device, the show names the place it has now.</summary>
internal static class PinEdits
{
    /// <summary>What is served and names no point yet gets the points it has.</summary>
    public static PinResult Of(ResolvedShow show)
    {
        var edits = new List<ShowEdit>();
        var pinned = new List<PinnedPlace>();
        foreach (var feed in show.Feeds)
        {
            var to = feed.Model.To.ToArray();
            for (var entry = 0; entry < to.Length; entry++)
            {
                var demand = show.Demands[feed.FirstDemand + entry];
                if (to[entry].At is null && !demand.Existing.IsNone)
                {
                    var at = show.Graph.Address(EndOf(show, to[entry], demand), demand.Width);
                    to[entry] = new Destination { At = at, Extensions = to[entry].Extensions };
                    pinned.Add(new PinnedPlace { Demand = demand.Key, At = at });
                }
            }

            var after = feed.Model with { To = to.ToValueList() };
            if (!after.Equals(feed.Model))
            {
                edits.Add(ShowEdit.Replace(ShowLists.Feeds, feed.Index, feed.Model, after));
            }
        }

        foreach (var line in show.Lines)
        {
            var demand = show.Demands[line.Demand];
            if (!demand.IsPinned && !demand.Existing.IsNone && line.Model.From.Source is null)
            {
                var at = show.Graph.Address(demand.Existing, demand.Width);
                var from = new LineOrigin { At = [at], Extensions = line.Model.From.Extensions };
                edits.Add(ShowEdit.Replace(ShowLists.Lines, line.Index, line.Model, line.Model with { From = from }));
                pinned.Add(new PinnedPlace { Demand = demand.Key, At = at });
            }
        }

        return new PinResult
        {
            Show = edits.Aggregate(show.Document, static (changed, edit) => edit.Apply(changed)!),
            Edits = edits.ToValueList(),
            Pinned = pinned.ToValueList(),
            Open = show.Demands.Where(demand => !demand.IsPinned && demand.Existing.IsNone).Select(demand => demand.Key).ToValueList(),
        };
    }

    /// <summary>Where the feed ends: an input of the device it names when a cable leads there, else the output.</summary>
    private static PointIndex EndOf(ResolvedShow show, Destination to, DemandNode demand)
    {
        var graph = show.Graph;
        if (Names(to, graph.DeviceOf(demand.Existing)))
        {
            return demand.Existing;
        }

        foreach (var next in graph.Fed(demand.Existing))
        {
            var input = new PointIndex(next);
            if (graph.Via(input) == HopKind.Cable && Names(to, graph.DeviceOf(input)) && (demand.Width == 1 || IsNeighbour(graph, input, demand.Existing)))
            {
                return input;
            }
        }

        return demand.Existing;
    }

    private static bool IsNeighbour(SignalGraph graph, PointIndex input, PointIndex output) =>
        input.Value + 1 < graph.PointCount && graph.DeviceOf(input) == graph.DeviceOf(input + 1) && graph.Upstream(input + 1) == output + 1;

    /// <summary>True when an entry names a device, or the zone it stands in.</summary>
    public static bool Names(Destination to, DeviceNode device) => to.Devices.Contains(device.Id) || (device.Zone is { } zone && to.Zones.Contains(zone.Id));
}
