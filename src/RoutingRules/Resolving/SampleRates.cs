using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>The sample rate each device runs at: that of the clock it leads or backs up, else of the first network it is linked to.</summary>
/// <remarks>Where a rig says nothing about a device but has one clock only, that clock counts; without any clock it is 48 kHz.</remarks>
internal sealed class SampleRates(Rig rig)
{
    public int Of(Id<Device> device)
    {
        foreach (var clock in rig.Clocks)
        {
            if (clock.Leader == device || clock.Backup == device)
            {
                return clock.SampleRate;
            }
        }

        foreach (var network in rig.Networks)
        {
            if (ClockOf(network) is { } clock && IsLinked(network.Id, device))
            {
                return clock.SampleRate;
            }
        }

        return rig.Clocks.Count == 1 ? rig.Clocks[0].SampleRate : ProfileCompiler.DefaultSampleRate;
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

    private bool IsLinked(Id<Network> network, Id<Device> device)
    {
        foreach (var link in rig.Links)
        {
            if (link.Network == network && (link.From.Device == device || link.To.Device == device))
            {
                return true;
            }
        }

        return false;
    }
}
