using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Networks;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports devices that cannot run at the rate of a clock, and streams that change clocks without a rate converter.</summary>
/// <remarks>
/// One finding for each device and rate it cannot run at (entities: device and rate), and one for each device whose streams or multicore are on a network of
/// another clock than its own (entities: device and network). A rate converter at the slots or the jack lifts both. Two clock leaders are told elsewhere.
/// </remarks>
public sealed class SampleRateMismatch : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5006",
            Name = "sample-rate-mismatch",
            Title = "Sample rates do not fit",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks =
                "Devices can run at the rate of their networks' clocks, and streams are sent and received on the clock their device follows, "
                + "unless a rate converter sits at the slots.",
            Why = "Across two rates nothing is heard, or noise; across two clocks of one rate a sample is dropped or doubled every few seconds.",
            Remedy = "Put both ends on one clock, choose a rate that all devices know, or use slots with a rate converter.",
            Source = "AES67 and AES11 (from memory): one rate and one clock along a path",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Rig.Clocks.IsEmpty)
        {
            return;
        }

        var map = ClockMap.Of(context);
        foreach (var device in context.Devices)
        {
            CheckDevice(context, map, device);
        }

        if (context.Rig.Clocks.Count > 1)
        {
            CheckDomains(context, map);
        }
    }

    private static void CheckDevice(RuleContext context, ClockMap map, DeviceNode device)
    {
        if (device.Profile.SampleRates.IsEmpty || ClockMap.HasConverter(device))
        {
            return;
        }

        var told = new List<int>();
        var own = map.ClockOf(device);
        for (var network = 0; network < context.Rig.Networks.Count; network++)
        {
            if (map.IsOn(network, device) && map.ClockOf(network) is >= 0 and var clock && clock != own)
            {
                Compare(clock);
            }
        }

        if (own >= 0)
        {
            Compare(own);
        }

        void Compare(int clock)
        {
            context.LookedAt();
            var rate = context.Rig.Clocks[clock].SampleRate;
            if (!told.Contains(rate) && !device.Profile.SampleRates.Contains(rate))
            {
                told.Add(rate);
                var rates = new List<string>();
                foreach (var known in device.Profile.SampleRates)
                {
                    rates.Add(Rate(known));
                }

                context.Report(
                    $"{device.Id} runs at {Wording.List(rates, "or")}, but clock '{context.Rig.Clocks[clock].Id}', which it follows, runs at {Rate(rate)}.",
                    $"/rig/devices/{device.Index}",
                    Entity.Of("device", device.Id),
                    Entity.Of("rate", rate.ToString(CultureInfo.InvariantCulture))
                );
            }
        }
    }

    private static void CheckDomains(RuleContext context, ClockMap map)
    {
        var told = new HashSet<(int Device, int Network)>();
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
                    CheckEnd(
                        context,
                        map,
                        told,
                        network,
                        receiver.At,
                        $"/patch/streams/{stream.Index}/to/{receiver.Index}",
                        $"receives stream '{stream.Model.Id}'"
                    );
                }
            }

            if (isReceived)
            {
                CheckEnd(context, map, told, network, stream.From, $"/patch/streams/{stream.Index}/from", $"sends stream '{stream.Model.Id}'");
            }
        }

        foreach (var link in context.Links)
        {
            if (link.State == ConnectionState.Connected && context.Network.SwitchFrom(link.Index) < 0)
            {
                CheckEnd(context, map, told, link.Network, link.From, $"/rig/links/{link.Index}", $"is joined by link '{link.Model.Id}'");
                CheckEnd(context, map, told, link.Network, link.To, $"/rig/links/{link.Index}", $"is joined by link '{link.Model.Id}'");
            }
        }
    }

    private static void CheckEnd(
        RuleContext context,
        ClockMap map,
        HashSet<(int Device, int Network)> told,
        int network,
        PointIndex point,
        string pointer,
        string does
    )
    {
        var device = context.DeviceOf(point);
        var (own, other) = (map.ClockOf(device), map.ClockOf(network));
        context.LookedAt(own < 0 || other < 0 ? 0 : 1);
        if (
            own < 0
            || other < 0
            || own == other
            || context.GroupOf(point).Model.RateConverter
            || (context.GroupOf(point).Kind == PortKind.Network && ClockMap.HasConverter(device))
            || !map.IsOnNetworkOf(own, device)
            || LeadsBoth(context, device, own, other)
            || IsUnable(context, device, other)
            || !told.Add((device.Index, network))
        )
        {
            return;
        }

        var (ownClock, otherClock) = (context.Rig.Clocks[own], context.Rig.Clocks[other]);
        var id = context.Rig.Networks[network].Id;
        var differ =
            ownClock.SampleRate == otherClock.SampleRate
                ? $"clock '{otherClock.Id}', while it follows clock '{ownClock.Id}': the two drift apart"
                : $"clock '{otherClock.Id}' at {Rate(otherClock.SampleRate)}, while it follows clock '{ownClock.Id}' at {Rate(ownClock.SampleRate)}";
        context.Report(
            $"{device.Id} {does} on network '{id}' of {differ}, and no rate converter sits between.",
            pointer,
            Entity.Of("device", device.Id),
            Entity.Of("network", id)
        );
    }

    private static bool LeadsBoth(RuleContext context, DeviceNode device, int own, int other) =>
        context.Rig.Clocks[own].Leader == device.Id && context.Rig.Clocks[other].Leader == device.Id;

    private static bool IsUnable(RuleContext context, DeviceNode device, int clock) =>
        !device.Profile.SampleRates.IsEmpty && !ClockMap.HasConverter(device) && !device.Profile.SampleRates.Contains(context.Rig.Clocks[clock].SampleRate);

    private static string Rate(int hertz) => string.Create(CultureInfo.InvariantCulture, $"{hertz / 1000.0:0.###} kHz");
}
