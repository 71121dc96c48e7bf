using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Finds the devices that a demand names, by themselves or by their zones.</summary>
internal sealed class DeviceFinder
{
    private readonly DeviceNode[] devices;

    /// <summary>The devices by id, and those with a zone by zone; equal ones in rig order.</summary>
    private readonly DeviceNode[] byId;
    private readonly DeviceNode[] byZone;
    private readonly List<(int Index, bool ByZone)> found = [];

    public DeviceFinder(DeviceNode[] devices)
    {
        this.devices = devices;
        byId = [.. devices];
        byZone = Array.FindAll(devices, static device => device.Model.Zone is not null);
        Array.Sort(byId, static (x, y) => x.Id.CompareTo(y.Id) is var order && order != 0 ? order : x.Index - y.Index);
        Array.Sort(byZone, static (x, y) => x.Model.Zone!.Value.CompareTo(y.Model.Zone!.Value) is var order && order != 0 ? order : x.Index - y.Index);
    }

    /// <summary>The devices in rig order, each once, and whether each is named itself. The list is used again at the next call.</summary>
    public List<(int Index, bool ByZone)> Find(ValueList<Id<Device>> names, ValueList<Id<Zone>> zones)
    {
        found.Clear();
        foreach (var name in names)
        {
            for (var i = First(byId, name, static device => device.Id); i < byId.Length && byId[i].Id == name; i++)
            {
                found.Add((byId[i].Index, false));
            }
        }

        foreach (var zone in zones)
        {
            for (var i = First(byZone, zone, static device => device.Model.Zone!.Value); i < byZone.Length && byZone[i].Model.Zone == zone; i++)
            {
                found.Add((byZone[i].Index, true));
            }
        }

        // Of the two ways to be found the name stands first, and stays.
        found.Sort();
        var kept = 0;
        for (var i = 0; i < found.Count; i++)
        {
            if (kept == 0 || found[kept - 1].Index != found[i].Index)
            {
                found[kept++] = found[i];
            }
        }

        found.RemoveRange(kept, found.Count - kept);
        return found;
    }

    /// <summary>The device at a position in the rig.</summary>
    public DeviceNode this[int index] => devices[index];

    private static int First<T>(DeviceNode[] sorted, Id<T> wanted, Func<DeviceNode, Id<T>> key)
    {
        var low = 0;
        var high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            (low, high) = key(sorted[middle]).CompareTo(wanted) < 0 ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
