using System.Globalization;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports streams whose packets are larger than a network carries.</summary>
/// <remarks>One finding for each stream; the entity is the stream.</remarks>
public sealed class PacketTooLarge : Rule<StreamNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4009",
            Name = "packet-too-large",
            Title = "Packet too large",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "One packet of every stream fits into 1500 octets of Ethernet payload, and into 1440 octets of samples where audio travels as RTP.",
            Why = "A packet that does not fit is refused or cut in pieces that receivers do not put together: the stream never starts.",
            Remedy = "Send fewer channels in one stream, or shorten the packet time of the network.",
            Source = "IEEE 802.3 (payload of 1500 octets) and AES67, clauses 6 and 7 (1440 octets), both from memory",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, StreamNode subject)
    {
        if (subject.State != ConnectionState.Connected || context.Network.IndexOf(subject.Model.Network) is not (>= 0 and var index))
        {
            context.LookedAt(0);
            return;
        }

        var network = context.Rig.Networks[index];
        if (TransportData.Find(network.Transport) is not { } kind)
        {
            context.CouldNotDecide(TransportData.Unknown(network));
            return;
        }

        var rate = NetworkRates.Of(context.Rig, network, context.DeviceOf(subject.From));
        var load = kind.Load(network.PacketMicroseconds, rate, subject.Model.From.Width);
        if (load.SampleOctets <= kind.MaxSampleOctets || kind.MaxChannels(load.Samples) is not { } most)
        {
            return;
        }

        var remedy =
            most == 0
                ? "not even one channel fits"
                : string.Create(CultureInfo.InvariantCulture, $"at most {most} {(most == 1 ? "channel fits" : "channels fit")}");
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Stream '{subject.Model.Id}' of {subject.Model.From.Width} {(subject.Model.From.Width == 1 ? "channel" : "channels")} makes packets of "
                    + $"{load.SampleOctets} octets of audio on network '{network.Id}', but {kind.MaxSampleOctets} octets fit: {remedy}."
            ),
            $"/patch/streams/{subject.Index}/from",
            Entity.Of("stream", subject.Model.Id)
        );
    }
}
