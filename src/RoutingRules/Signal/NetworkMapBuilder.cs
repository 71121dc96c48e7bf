using System.Buffers;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Numbers the switches inside devices and finds which switch each end of a link sits at.</summary>
internal static class NetworkMapBuilder
{
    public static NetworkMap Build(ValueList<Network> networks, DeviceNode[] devices, LinkNode[] links, bool[]? without = null)
    {
        var switchCount = 0;
        var switchesOf = new int[devices.Length][];
        var pointCount = devices.Length == 0 ? 0 : devices[^1].FirstPoint + devices[^1].Type.PointCount;
        var switchOfJack = ArrayPool<int>.Shared.Rent(pointCount);
        switchOfJack.AsSpan(0, pointCount).Fill(-1);
        var own = new List<int>();
        foreach (var device in devices)
        {
            own.Clear();
            foreach (var group in device.Type.Groups)
            {
                if (group.Kind != PortKind.Network || IsCarrierJack(device, group))
                {
                    continue;
                }

                for (var number = 1; number <= group.Count; number++)
                {
                    var first = FirstOfBridge(group, number);
                    var jack = device.FirstPoint + group.Offset + number - 1;
                    if (first < number)
                    {
                        switchOfJack[jack] = switchOfJack[device.FirstPoint + group.Offset + first - 1];
                        continue;
                    }

                    switchOfJack[jack] = switchCount;
                    own.Add(switchCount++);
                }
            }

            switchesOf[device.Index] = [.. own];
        }

        var ends = new int[2 * links.Length];
        for (var i = 0; i < links.Length; i++)
        {
            var joined =
                links[i].State == ConnectionState.Connected
                && !(without?[i] ?? false)
                && switchOfJack[links[i].From.Value] >= 0
                && switchOfJack[links[i].To.Value] >= 0;
            ends[2 * i] = joined ? switchOfJack[links[i].From.Value] : -1;
            ends[(2 * i) + 1] = joined ? switchOfJack[links[i].To.Value] : -1;
        }

        ArrayPool<int>.Shared.Return(switchOfJack);
        return new NetworkMap([.. networks], devices, links, switchesOf, ends, switchCount);
    }

    private static bool IsCarrierJack(DeviceNode device, GroupNode jacks)
    {
        foreach (var group in device.Type.Groups)
        {
            if (group.Model.Carrier is { } carrier && carrier.Group == jacks.Id)
            {
                return true;
            }
        }

        return false;
    }

    private static int FirstOfBridge(GroupNode group, int number)
    {
        foreach (var set in group.Model.Bridged)
        {
            if (number >= set.Jacks.First && number <= set.Jacks.Last)
            {
                return set.Jacks.First;
            }
        }

        return number;
    }
}
