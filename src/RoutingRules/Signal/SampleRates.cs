using RoutingRules.Model;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Signal;

/// <summary>The sample rate each device runs at: that of the clock it leads or backs up, else of the first network it is linked to.</summary>
/// <remarks>Where a rig says nothing about a device but has one clock only, that clock counts; without any clock it is 48 kHz.</remarks>
internal sealed class SampleRates
{
    private readonly Rig rig;
    private readonly Dictionary<string, int> deviceIndex;

    /// <summary>For each device by its index the rate of the clock it leads or backs up, or of its network; 0 for unknown.</summary>
    private readonly int[] rates;

    /// <summary>The rates of a rig.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="deviceIndex">The device that each id stands for.</param>
    public SampleRates(Rig rig, Dictionary<string, int> deviceIndex)
    {
        this.rig = rig;
        this.deviceIndex = deviceIndex;
        rates = new int[rig.Devices.Count];
        if (rig.Clocks.IsEmpty)
        {
            return;
        }

        FollowNetworks();
        for (var i = rig.Clocks.Count - 1; i >= 0; i--)
        {
            Set(rig.Clocks[i].Leader, rig.Clocks[i].SampleRate);
            if (rig.Clocks[i].Backup is { } backup)
            {
                Set(backup, rig.Clocks[i].SampleRate);
            }
        }
    }

    public int Of(Id<Device> device) =>
        deviceIndex.TryGetValue(device.Value, out var index) && rates[index] is > 0 and var rate ? rate
        : rig.Clocks.Count == 1 ? rig.Clocks[0].SampleRate
        : ProfileCompiler.DefaultSampleRate;

    private void FollowNetworks()
    {
        var first = new int[rates.Length];
        Array.Fill(first, rig.Networks.Count);
        foreach (var link in rig.Links)
        {
            for (var network = 0; network < rig.Networks.Count; network++)
            {
                if (rig.Networks[network].Id == link.Network && ClockOf(rig.Networks[network]) is { } clock)
                {
                    Follow(first, link.From.Device, network, clock);
                    Follow(first, link.To.Device, network, clock);
                    break;
                }
            }
        }
    }

    private void Follow(int[] first, Id<Device> device, int network, Clock clock)
    {
        if (deviceIndex.TryGetValue(device.Value, out var index) && network < first[index])
        {
            first[index] = network;
            rates[index] = clock.SampleRate;
        }
    }

    private void Set(Id<Device> device, int rate)
    {
        if (deviceIndex.TryGetValue(device.Value, out var index))
        {
            rates[index] = rate;
        }
    }

    private Clock? ClockOf(Network network)
    {
        foreach (var clock in rig.Clocks)
        {
            if (clock.Id == network.Clock)
            {
                return clock;
            }
        }

        return null;
    }
}
