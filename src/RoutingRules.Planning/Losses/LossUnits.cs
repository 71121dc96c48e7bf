using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Everything that can fail, in the order devices, links, cables, looms, supplies, points, each in the order of the rig.</summary>
internal sealed class LossUnits
{
    private readonly FailureModel model;
    private readonly ResolvedShow show;
    private readonly Dictionary<int, int> deviceUnits = [];
    private readonly Dictionary<int, int> linkUnits = [];
    private readonly Dictionary<int, List<int>> cableUnits = [];
    private readonly Dictionary<Id<PowerSource>, int> powerUnits = [];
    private readonly Dictionary<int, int> pointUnits = [];
    private readonly List<List<int>> hanging = [];

    public LossUnits(FailureModel model, ValueList<LossKind> kinds)
    {
        this.model = model;
        show = model.Show;
        foreach (var kind in Enum.GetValues<LossKind>())
        {
            if (kinds.IsEmpty ? kind != LossKind.Point : kinds.Contains(kind))
            {
                Add(kind);
            }
        }
    }

    public List<LossUnit> All { get; } = [];

    /// <summary>What is out of order when some of them fail at once.</summary>
    public LossSet SetOf(params ReadOnlySpan<int> units)
    {
        var lost = model.NewSet();
        var powers = new HashSet<Id<PowerSource>>();
        foreach (var unit in units)
        {
            var one = All[unit];
            switch (one.Thing.Kind)
            {
                case LossKind.Device:
                    lost.Devices[one.Index] = true;
                    break;
                case LossKind.Link:
                    lost.Links[one.Index] = true;
                    break;
                case LossKind.Power:
                    powers.Add(new Id<PowerSource>(one.Thing.Id));
                    break;
                case LossKind.Point:
                    lost.Points.Add(one.Index);
                    break;
                default:
                    foreach (var cable in one.Cables)
                    {
                        lost.Cables[cable] = true;
                    }

                    break;
            }
        }

        if (powers.Count > 0)
        {
            foreach (var unit in units)
            {
                if (All[unit].Thing.Kind == LossKind.Power)
                {
                    hanging[All[unit].Index].ForEach(device => lost.Devices[device] |= show.Devices[device].Model.Power.All(powers.Contains));
                }
            }
        }

        foreach (var link in show.Links)
        {
            if (link.State == ConnectionState.Connected)
            {
                lost.Links[link.Index] |= lost.Devices[show.Graph.DeviceOf(link.From).Index] || lost.Devices[show.Graph.DeviceOf(link.To).Index];
            }
        }

        return lost;
    }

    /// <summary>The things that some ends need to go on sounding as they do, in ascending order.</summary>
    public List<int> Needed(int[] ends, LossSet lost)
    {
        var needed = new SortedSet<int>();
        foreach (var end in ends)
        {
            foreach (var at in show.Graph.Upward(new PointIndex(end)))
            {
                AddDevice(show.Graph.DeviceOf(at), needed);
                if (pointUnits.TryGetValue(at.Value, out var point))
                {
                    needed.Add(point);
                }

                AddHop(at, lost, needed);
            }
        }

        return [.. needed];
    }

    /// <summary>The name of a loom: the way without the numbers at its end, such as <c>loom B</c> of <c>loom B 1-2</c>.</summary>
    public static string LoomOf(string way)
    {
        var end = way.Length;
        while (end > 0 && (char.IsAsciiDigit(way[end - 1]) || way[end - 1] is '-' or ','))
        {
            end--;
        }

        return end > 0 && end < way.Length && way[end - 1] == ' ' ? way[..end].TrimEnd() : way;
    }

    private void AddHop(PointIndex at, LossSet lost, SortedSet<int> needed)
    {
        var before = show.Graph.Upstream(at);
        if (before.IsNone)
        {
            return;
        }

        var via = show.Graph.ViaIndex(at);
        switch (show.Graph.Via(at))
        {
            case HopKind.Cable:
                needed.UnionWith(cableUnits.GetValueOrDefault(via) ?? []);
                break;
            case HopKind.Carrier:
                AddLink(via, needed);
                break;
            case HopKind.Stream:
                foreach (var link in model.Way(model.NetworkOf(at), show.Graph.DeviceOf(before), show.Graph.DeviceOf(at), lost) ?? [])
                {
                    AddLink(link, needed);
                    AddDevice(show.Graph.DeviceOf(show.Links[link].From), needed);
                    AddDevice(show.Graph.DeviceOf(show.Links[link].To), needed);
                }

                break;
            default:
                break;
        }
    }

    private void AddLink(int link, SortedSet<int> needed)
    {
        if (linkUnits.TryGetValue(link, out var unit))
        {
            needed.Add(unit);
        }
    }

    private void AddDevice(DeviceNode device, SortedSet<int> needed)
    {
        if (deviceUnits.TryGetValue(device.Index, out var unit))
        {
            needed.Add(unit);
        }

        foreach (var power in device.Model.Power)
        {
            if (powerUnits.TryGetValue(power, out var supply))
            {
                needed.Add(supply);
            }
        }
    }

    private void Add(LossKind kind)
    {
        switch (kind)
        {
            case LossKind.Device:
                foreach (var device in show.Devices)
                {
                    deviceUnits.Add(device.Index, All.Count);
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing
                            {
                                Kind = kind,
                                Id = device.Id.Value,
                                Label = device.Model.Label,
                            },
                            Index = device.Index,
                        }
                    );
                }

                break;
            case LossKind.Link:
                foreach (var link in show.Links.Where(link => link.State == ConnectionState.Connected))
                {
                    linkUnits.Add(link.Index, All.Count);
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing { Kind = kind, Id = link.Model.Id.Value },
                            Index = link.Index,
                        }
                    );
                }

                break;
            case LossKind.Cable:
                foreach (var cable in show.Cables.Where(cable => cable.State == ConnectionState.Connected))
                {
                    AddCables(kind, $"{cable.Model.From} to {cable.Model.To}", [cable.Index]);
                }

                break;
            case LossKind.Way:
                AddLooms();
                break;
            case LossKind.Power:
                AddPower();
                break;
            default:
                AddPoints();
                break;
        }
    }

    private void AddCables(LossKind kind, string id, int[] cables)
    {
        foreach (var cable in cables)
        {
            if (!cableUnits.TryGetValue(cable, out var units))
            {
                cableUnits.Add(cable, units = []);
            }

            units.Add(All.Count);
        }

        All.Add(
            new LossUnit
            {
                Thing = new LostThing { Kind = kind, Id = id },
                Cables = cables,
            }
        );
    }

    private void AddLooms()
    {
        var looms = new List<(string Loom, Id<Device> From, List<int> Cables)>();
        foreach (var cable in show.Cables)
        {
            if (cable.State != ConnectionState.Connected || cable.Model.Way is not { } way)
            {
                continue;
            }

            var at = looms.FindIndex(loom => loom.Loom == LoomOf(way) && loom.From == cable.Model.From.Device);
            if (at < 0)
            {
                at = looms.Count;
                looms.Add((LoomOf(way), cable.Model.From.Device, []));
            }

            looms[at].Cables.Add(cable.Index);
        }

        foreach (var (loom, from, cables) in looms)
        {
            if (cables.Count > 1)
            {
                AddCables(LossKind.Way, $"{loom} at {from}", [.. cables]);
            }
        }
    }

    private void AddPower()
    {
        foreach (var device in show.Devices)
        {
            foreach (var power in device.Model.Power)
            {
                if (powerUnits.TryAdd(power, All.Count))
                {
                    All.Add(
                        new LossUnit
                        {
                            Thing = new LostThing { Kind = LossKind.Power, Id = power.Value },
                            Index = hanging.Count,
                        }
                    );
                    hanging.Add([]);
                }

                hanging[All[powerUnits[power]].Index].Add(device.Index);
            }
        }
    }

    private void AddPoints()
    {
        var points = new SortedSet<int>();
        foreach (var end in model.Deliveries.SelectMany(delivery => delivery.Ends))
        {
            foreach (var at in show.Graph.Upward(new PointIndex(end)))
            {
                if (show.Graph.GroupOf(at).Kind is PortKind.Input or PortKind.Output)
                {
                    points.Add(at.Value);
                }
            }
        }

        foreach (var point in points)
        {
            pointUnits.Add(point, All.Count);
            All.Add(
                new LossUnit
                {
                    Thing = new LostThing
                    {
                        Kind = LossKind.Point,
                        Id = string.Create(CultureInfo.InvariantCulture, $"{show.Graph.Address(new PointIndex(point))}"),
                    },
                    Index = point,
                }
            );
        }
    }
}
