using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>What things that can fail take along, and which of them signal needs.</summary>
internal sealed class LossUnits
{
    private readonly FailureModel model;
    private readonly ResolvedShow show;
    private readonly LossUnitList list;

    public LossUnits(FailureModel model, ValueList<LossKind> kinds)
    {
        this.model = model;
        show = model.Show;
        list = new LossUnitList(model, kinds);
    }

    public List<LossUnit> All => list.All;

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
                    list.Hanging[All[unit].Index].ForEach(device => lost.Devices[device] |= show.Devices[device].Model.Power.All(powers.Contains));
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
                if (list.Points.TryGetValue(at.Value, out var point))
                {
                    needed.Add(point);
                }

                AddHop(at, lost, needed);
            }
        }

        return [.. needed];
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
                needed.UnionWith(list.Cables.GetValueOrDefault(via) ?? []);
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
        if (list.Links.TryGetValue(link, out var unit))
        {
            needed.Add(unit);
        }
    }

    private void AddDevice(DeviceNode device, SortedSet<int> needed)
    {
        if (list.Devices.TryGetValue(device.Index, out var unit))
        {
            needed.Add(unit);
        }

        foreach (var power in device.Model.Power)
        {
            if (list.Powers.TryGetValue(power, out var supply))
            {
                needed.Add(supply);
            }
        }
    }
}
