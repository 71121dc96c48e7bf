using System.Globalization;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports digital multicores whose ends count channels in two ways.</summary>
/// <remarks>One finding for each link; the entity is the link. Only the channel numbers of AES10 are compared: other ends may differ on purpose.</remarks>
public sealed class MulticoreEndsDiffer : Rule<LinkNode>
{
    private static readonly (int Short, int Long)[] Modes = [(56, 64), (28, 32)];

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5015",
            Name = "multicore-ends-differ",
            Title = "Ends of 56 and 64 channels on one multicore",
            Family = RuleFamily.Network,
            Severity = Severity.Note,
            Checks = "Both ends of a digital multicore of AES10 have as many channels: not 56 at one and 64 at the other, nor 28 and 32.",
            Why = "What is sent in the last channels arrives nowhere, and some devices take a stream of the other mode for no signal at all.",
            Remedy = "Set both ends to one mode, and patch nothing into the channels that one of them does not have.",
            Source = "AES10: 56 channels with varispeed, 64 without, half at double rate (handbook excerpt and encyclopaedia; 32 from memory)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, LinkNode subject)
    {
        context.LookedAt(0);
        if (subject.State != ConnectionState.Connected)
        {
            return;
        }

        foreach (var (from, to) in (ReadOnlySpan<(PointIndex, PointIndex)>)[(subject.From, subject.To), (subject.To, subject.From)])
        {
            if (Slots(context, from, PortKind.Transmit) is not { } sent || Slots(context, to, PortKind.Receive) is not { } received)
            {
                continue;
            }

            context.LookedAt();
            if (Array.IndexOf(Modes, (Math.Min(sent, received), Math.Max(sent, received))) >= 0)
            {
                context.Report(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Link '{subject.Model.Id}' has {sent} channels at {context.Address(from)} and {received} at {context.Address(to)}."
                    ),
                    $"/rig/links/{subject.Index}",
                    Entity.Of("link", subject.Model.Id)
                );
                return;
            }
        }
    }

    private static int? Slots(RuleContext context, PointIndex jack, PortKind kind)
    {
        var device = context.DeviceOf(jack);
        foreach (var group in device.Groups)
        {
            if (
                group.Kind == kind
                && group.Model.Carrier is { } carrier
                && device.Group(carrier.Group) is { } jacks
                && device.First(jacks) + (carrier.First - 1) == jack
            )
            {
                return group.Count;
            }
        }

        return null;
    }
}
