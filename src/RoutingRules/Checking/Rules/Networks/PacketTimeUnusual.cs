using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports networks with a packet time that no standard of their transport knows.</summary>
/// <remarks>One finding for each network; the entity is the network. A network that states none has the usual one.</remarks>
public sealed class PacketTimeUnusual : Rule<ResolvedShow>
{
    /// <summary>Samples in a packet at 44.1 and 48 kHz for the packet times of AES67.</summary>
    private static readonly int[] UsualSamples = [6, 12, 16, 48, 192];

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5013",
            Name = "packet-time-unusual",
            Title = "Packet time no standard knows",
            Family = RuleFamily.Network,
            Severity = Severity.Warning,
            Checks =
                "A network of class A sends every 125 microseconds, one of class B every 250; RTP audio has packets of 125, 250, 333 "
                + "microseconds, 1 or 4 ms, or what as many samples last at 44.1 kHz.",
            Why = "Receivers are built for the packet times of the standards: with another they stay silent, or the load of the links is other than computed.",
            Remedy = "Take one of the packet times that the message names, at the sender and in the document.",
            Source =
                "IEEE 802.1Q class intervals (read in open documentation); AES67, clause 7.2 (from memory; 44.1 kHz after open code that cites "
                + "it); ST 2110-30: 125 microseconds and 1 ms (from memory)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        for (var i = 0; i < context.Rig.Networks.Count; i++)
        {
            var network = context.Rig.Networks[i];
            if (network.PacketMicroseconds is not { } time || TransportData.Find(network.Transport) is not { PacketMicroseconds: { } usual } kind)
            {
                continue;
            }

            context.LookedAt();
            if (kind.IsPaced ? time == usual : TransportData.IsUsualRtpTime(time) || Lasts(time, NetworkRates.Clock(context.Rig, network.Clock)?.SampleRate))
            {
                continue;
            }

            var known = kind.IsPaced
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(network.Transport == Transport.AvtpClassA ? "class A" : "class B")} sends every {usual} \u00b5s"
                )
                : "AES67 and ST 2110-30 know 125, 250, 333, 1000 and 4000 \u00b5s";
            context.Report(
                string.Create(CultureInfo.InvariantCulture, $"Network '{network.Id}' has packets of {time} \u00b5s, but {known}."),
                $"/rig/networks/{i}/packetMicroseconds",
                Entity.Of("network", network.Id)
            );
        }
    }

    /// <summary>True when so many microseconds are, within one, what a usual number of samples lasts at 44.1 kHz or a multiple.</summary>
    private static bool Lasts(int microseconds, int? rate) =>
        rate is { } known && known % 11_025 == 0 && Array.Exists(UsualSamples, samples => Math.Abs((samples * 1_000_000.0 / 44_100) - microseconds) <= 1);
}
