using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Writes what stands as points: where a feed or a line may be anywhere in a zone or at a device, the show names the place it has now.</summary>
internal static class PinEdits
{
    /// <summary>What is served and names no point yet gets the points it has.</summary>
    /// <param name="show">The show.</param>
    /// <param name="only">Ids of the feeds and lines to look at; null for all.</param>
    public static PinResult Of(ResolvedShow show, IReadOnlyCollection<string>? only)
    {
        var edits = new List<ShowEdit>();
        var pinned = new List<PinnedPlace>();
        foreach (var feed in show.Feeds.Where(feed => only?.Contains(feed.Model.Id.Value) != false))
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

        foreach (var line in show.Lines.Where(line => only?.Contains(line.Model.Id.Value) != false))
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
            Open = show
                .Demands.Where(demand => !demand.IsPinned && demand.Existing.IsNone && only?.Contains(OwnerOf(demand)) != false)
                .Select(demand => demand.Key)
                .ToValueList(),
        };
    }

    /// <summary>The id of the feed or line that a demand belongs to.</summary>
    public static string OwnerOf(DemandNode demand) => demand.Feed?.Model.Id.Value ?? demand.Line!.Model.Id.Value;

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
