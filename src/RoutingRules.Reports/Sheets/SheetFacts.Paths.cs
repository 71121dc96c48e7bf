using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <content>Paths, phantom power and what is missing.</content>
internal sealed partial class SheetFacts
{
    /// <summary>The way of the cable that ends at an input, with the position when the cable is a run of several; null when nothing was said.</summary>
    public string? Way(PointIndex input)
    {
        var cable = Show.Cables[Graph.ViaIndex(input)];
        return cable.Model.Way is not { } way ? null
            : cable.Model.From.Width == 1 ? way
            : string.Create(CultureInfo.InvariantCulture, $"{way}, {input.Value - cable.To.Value + 1} of {cable.Model.From.Width}");
    }

    /// <summary>
    /// Every end a source reaches, as the connectors and channels on the way there, in ascending order of points; a receive slot counts only when a feed asks
    /// for it.
    /// </summary>
    public ValueList<SheetPath> Paths(PointIndex source)
    {
        var paths = new List<SheetPath>();
        var way = new List<PointIndex>();
        Follow(source);
        return paths.ToValueList();

        void Follow(PointIndex at)
        {
            var fed = Graph.Fed(at);
            foreach (var next in fed)
            {
                way.Add(new PointIndex(next));
                if (way.Count <= MaxDepth && !Graph.IsLooping(at))
                {
                    Follow(way[^1]);
                }

                way.RemoveAt(way.Count - 1);
            }

            if (fed.IsEmpty && way.Count > 0)
            {
                AddPath(paths, way);
            }
        }
    }

    private const int MaxDepth = 1000;

    private void AddPath(List<SheetPath> paths, List<PointIndex> way)
    {
        var places = new List<SheetPlace>();
        var cables = new List<string>();
        foreach (var point in way)
        {
            var kind = Graph.GroupOf(point).Kind;
            if (kind is PortKind.Output or PortKind.Input or PortKind.Sink || (kind is PortKind.Receive or PortKind.Transmit && Wanted(point).Count > 0))
            {
                places.Add(Place(point));
            }

            if (Graph.Via(point) == HopKind.Cable && Way(point) is { } name)
            {
                cables.Add(name);
            }
        }

        if (places.Count > 0)
        {
            paths.Add(new SheetPath { Places = places.ToValueList(), Way = cables.Count == 0 ? null : string.Join(", ", cables) });
        }
    }

    /// <summary>Phantom power at an input: as set, as supplied, as its lines want it.</summary>
    public SheetPhantom Phantom(PointIndex input)
    {
        var need = PhantomNeed.Either;
        foreach (var use in Starts(input))
        {
            var wants = use.Line?.Model.Phantom ?? PhantomNeed.Either;
            need = wants == PhantomNeed.Forbidden || need == PhantomNeed.Either ? wants : need;
        }

        bool? isOn = null;
        var supplied = false;
        foreach (var supply in Supplies(input))
        {
            supplied |= Graph.GroupOf(supply).Model.Phantom;
            foreach (var setting in Settings(supply))
            {
                isOn = isOn == true ? true : setting.Phantom ?? isOn;
            }
        }

        return new SheetPhantom
        {
            IsOn = isOn,
            IsSupplied = supplied,
            Need = need,
        };
    }

    /// <summary>The input itself and, when it supplies nothing, the inputs behind the passive split it belongs to.</summary>
    private List<PointIndex> Supplies(PointIndex input)
    {
        var supplies = new List<PointIndex> { input };
        for (var i = 0; i < supplies.Count && !Graph.GroupOf(supplies[i]).Model.Phantom; i++)
        {
            foreach (var next in Graph.Fed(supplies[i]))
            {
                var point = new PointIndex(next);
                if ((Graph.Via(point) == HopKind.Cable || PassesPhantom(supplies[i], point)) && !supplies.Contains(point))
                {
                    supplies.Add(point);
                }
            }
        }

        return supplies;
    }

    private bool PassesPhantom(PointIndex from, PointIndex to)
    {
        foreach (var path in Graph.DeviceOf(to).Profile.Through)
        {
            if (Graph.Via(to) == HopKind.Through && path.Phantom && path.From == Graph.GroupOf(from).Id && path.To == Graph.GroupOf(to).Id)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True for an input without cable, line, label, mark or phantom power that is on.</summary>
    public bool IsFreeInput(PointIndex input) =>
        Graph.GroupOf(input).Kind == PortKind.Input
        && Graph.Via(input) != HopKind.Cable
        && Label(input) is null
        && Marks(input).Count == 0
        && Starts(input).Count == 0
        && Wanted(input).Count == 0
        && !Settings(input).Any(setting => setting.Phantom == true);

    /// <summary>The free input of the same group that is nearest to a point, the higher one of two; none when there is none.</summary>
    public PointIndex NearestFree(PointIndex input)
    {
        var device = Graph.DeviceOf(input);
        var group = SignalGraph.GroupOf(device, input);
        var first = device.First(group).Value;
        for (var distance = 1; distance < group.Count; distance++)
        {
            foreach (var at in (ReadOnlySpan<int>)[input.Value + distance, input.Value - distance])
            {
                if (at >= first && at < first + group.Count && IsFreeInput(new PointIndex(at)))
                {
                    return new PointIndex(at);
                }
            }
        }

        return PointIndex.None;
    }

    /// <summary>The channels one position of a line is meant for and does not reach.</summary>
    public IEnumerable<PointIndex> Missing(SheetUse use)
    {
        for (var sink = 0; sink < use.Line!.Sinks.Count; sink++)
        {
            if (!use.Line.Sinks[sink].IsNone && !Reaches(use.Line, sink, use.Position))
            {
                yield return use.Line.Sinks[sink] + use.Position;
            }
        }
    }

    /// <summary>What a destination of a feed asks for, in words.</summary>
    public string Wanted(Destination to) => to.At is { } at ? Address(at) : SheetWords.Any(to.Devices.Select(DeviceName).Concat(to.Zones.Select(ZoneName)));

    /// <summary>What a line's origin asks for, in words.</summary>
    public string Wanted(LineOrigin from) =>
        from.Source is { } source ? Address(source)
        : !from.At.IsEmpty ? string.Join(" and ", from.At.Select(Address))
        : SheetWords.Any(from.Devices.Select(DeviceName).Concat(from.Zones.Select(ZoneName)));

    /// <summary>The points of an address by the words on the device; as written when there is no such device.</summary>
    public string Address(PointRange at) =>
        Graph.Find(at, out var first) != ConnectionState.Connected ? at.ToString()
        : at.Width == 1 ? Place(first).ToString()
        : $"{Place(first)}-{Place(first + (at.Width - 1)).Mark}";

    private string DeviceName(Id<Device> id) => Graph.Device(id)?.DisplayName ?? id.Value;

    private string ZoneName(Id<Zone> id)
    {
        foreach (var zone in Show.Document.Rig.Zones)
        {
            if (zone.Id == id)
            {
                return $"zone {SheetWords.Zone(zone, View)}";
            }
        }

        return $"zone {id}";
    }
}
