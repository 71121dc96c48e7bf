using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Networks;

/// <summary>Clocks and sample rates of networks.</summary>
internal static class NetworkRates
{
    /// <summary>The clock of an id; null for none and for an unknown one.</summary>
    public static Clock? Clock(Rig rig, Id<Clock>? id)
    {
        foreach (var clock in rig.Clocks)
        {
            if (clock.Id == id)
            {
                return clock;
            }
        }

        return null;
    }

    /// <summary>The sample rate a stream travels at: that of the network's clock, else that of its sender.</summary>
    public static int Of(Rig rig, Network network, DeviceNode sender) => Clock(rig, network.Clock)?.SampleRate ?? sender.SampleRate;
}
