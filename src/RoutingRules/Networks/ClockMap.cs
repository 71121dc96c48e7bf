using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Networks;

/// <summary>Which devices are on which networks, which clocks they follow, and which networks carry streams.</summary>
/// <remarks>
/// A device is on a network by a link, or by a stream that it sends or receives there. It follows the clock it leads or backs up, else that of the first
/// of its networks that has one.
/// </remarks>
internal sealed class ClockMap
{
    private readonly RuleContext context;
    private readonly int deviceCount;
    private readonly bool[] isOn;
    private readonly int[] clockOfNetwork;
    private readonly int[] clockOfDevice;
    private readonly List<int> reached = [];
    private DisjointSets? reach;

    /// <summary>How many streams with a receiver each network carries, by position in the rig.</summary>
    private readonly int[] streams;

    public ClockMap(RuleContext context)
    {
        this.context = context;
        deviceCount = context.Devices.Count;
        var networks = context.Rig.Networks;
        isOn = new bool[networks.Count * deviceCount];
        streams = new int[networks.Count];
        clockOfNetwork = new int[networks.Count];
        clockOfDevice = new int[deviceCount];
        for (var network = 0; network < networks.Count; network++)
        {
            clockOfNetwork[network] = IndexOf(networks[network].Clock);
        }

        AddLinks();
        AddStreams();
        FollowClocks();
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static ClockMap Of(RuleContext context) => context.Shared(static asking => new ClockMap(asking));

    /// <summary>How many streams with a receiver a network carries.</summary>
    public int StreamsOn(int network) => streams[network];

    /// <summary>Position of a network's clock in the rig; -1 when it names none or an unknown one.</summary>
    public int ClockOf(int network) => clockOfNetwork[network];

    /// <summary>Position of the clock a device follows; -1 when nothing is known.</summary>
    public int ClockOf(DeviceNode device) => clockOfDevice[device.Index];

    public bool IsOn(int network, DeviceNode device) => isOn[(network * deviceCount) + device.Index];

    /// <summary>True when a device is on some network of a clock.</summary>
    public bool IsOnNetworkOf(int clock, DeviceNode device)
    {
        for (var network = 0; network < clockOfNetwork.Length; network++)
        {
            if (clockOfNetwork[network] == clock && IsOn(network, device))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when a clock paces a network that carries streams.</summary>
    public bool IsUsed(int clock)
    {
        for (var network = 0; network < clockOfNetwork.Length; network++)
        {
            if (clockOfNetwork[network] == clock && streams[network] > 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// The devices that the links of a clock's networks join, as sets: a device passes its clock on to all its networks of that clock. They hold until the next
    /// call.
    /// </summary>
    public DisjointSets Reach(int clock)
    {
        var sets = reach ??= new DisjointSets(deviceCount);
        foreach (var device in reached)
        {
            sets.Reset(device);
        }

        reached.Clear();
        for (var network = 0; network < clockOfNetwork.Length; network++)
        {
            if (clockOfNetwork[network] != clock)
            {
                continue;
            }

            foreach (var link in NetworkLinks.Of(context).On(network))
            {
                Join(context.DeviceOf(link.From).Index, context.DeviceOf(link.To).Index);
            }

            if (!context.Network.HasLinks(network))
            {
                JoinAll();
            }
        }

        return sets;
    }

    /// <summary>True when a device has a rate converter between its network slots and itself.</summary>
    public static bool HasConverter(DeviceNode device)
    {
        foreach (var group in device.Groups)
        {
            if (group.Model.RateConverter && group.Kind is PortKind.Transmit or PortKind.Receive or PortKind.Network)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True for a device that sends or receives streams, and not only passes them on.</summary>
    public static bool HasSlots(DeviceNode device)
    {
        foreach (var group in device.Groups)
        {
            if (group.Kind is PortKind.Transmit or PortKind.Receive)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when a link that does not connect may be what is missing on a network; another rule says so.</summary>
    public bool HasBrokenLink(int network)
    {
        foreach (var link in context.Links)
        {
            if (link.State != ConnectionState.Connected && (link.Network == network || link.Network < 0))
            {
                return true;
            }
        }

        return false;
    }

    private void Join(int one, int other)
    {
        reach!.Join(one, other);
        reached.Add(one);
        reached.Add(other);
    }

    private void JoinAll()
    {
        var first = -1;
        foreach (var device in context.Devices)
        {
            if (context.Network.SwitchesOf(device).Length > 0)
            {
                first = first < 0 ? device.Index : first;
                Join(first, device.Index);
            }
        }
    }

    private int IndexOf(Id<Clock>? id)
    {
        for (var i = 0; i < context.Rig.Clocks.Count; i++)
        {
            if (context.Rig.Clocks[i].Id == id)
            {
                return i;
            }
        }

        return -1;
    }

    private void AddLinks()
    {
        foreach (var link in context.Links)
        {
            if (link.State == ConnectionState.Connected)
            {
                isOn[(link.Network * deviceCount) + context.DeviceOf(link.From).Index] = true;
                isOn[(link.Network * deviceCount) + context.DeviceOf(link.To).Index] = true;
            }
        }
    }

    private void AddStreams()
    {
        foreach (var stream in context.Streams)
        {
            if (stream.State != ConnectionState.Connected || context.Network.IndexOf(stream.Model.Network) is not (>= 0 and var network))
            {
                continue;
            }

            var isReceived = false;
            foreach (var receiver in stream.Receivers)
            {
                if (receiver.State == ConnectionState.Connected)
                {
                    isReceived = true;
                    isOn[(network * deviceCount) + context.DeviceOf(receiver.At).Index] = true;
                }
            }

            if (isReceived)
            {
                streams[network]++;
                isOn[(network * deviceCount) + context.DeviceOf(stream.From).Index] = true;
            }
        }
    }

    private void FollowClocks()
    {
        Array.Fill(clockOfDevice, -1);
        for (var network = 0; network < clockOfNetwork.Length; network++)
        {
            for (var device = 0; device < deviceCount && clockOfNetwork[network] >= 0; device++)
            {
                if (clockOfDevice[device] < 0 && isOn[(network * deviceCount) + device])
                {
                    clockOfDevice[device] = clockOfNetwork[network];
                }
            }
        }

        for (var clock = context.Rig.Clocks.Count - 1; clock >= 0; clock--)
        {
            Follow(context.Rig.Clocks[clock].Backup, clock);
            Follow(context.Rig.Clocks[clock].Leader, clock);
        }

        void Follow(Id<Device>? id, int clock)
        {
            if (id is { } known && context.Device(known) is { } device)
            {
                clockOfDevice[device.Index] = clock;
            }
        }
    }
}
