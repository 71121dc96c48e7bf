using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Lets results out: looks at each once more, and throws away what breaks a rule.</summary>
/// <remarks>
/// Where the input itself names what is not there, claims a sink or an input twice, leaves the grid or tears a block that a device routes whole, that stays as
/// written and is told by
/// the rules; nobody could say whose fault a broken rule is then, so such results pass.
/// </remarks>
internal static class ResultGate
{
    /// <summary>Does nothing when a result may be shown.</summary>
    /// <exception cref="UnsoundResultException">The result breaks a rule.</exception>
    public static void Pass(Show input, AssignmentResult result, AssignmentOptions options, Func<Id<DeviceProfile>, DeviceProfile?> profiles)
    {
        var facts = new AssignmentFacts(input, options, profiles);
        var verified = IsWhole(facts) ? AssignmentVerifier.Verify(facts, result) : null;
        if (verified is { IsValid: false })
            throw new UnsoundResultException(verified.Problems);
    }

    /// <summary>True when everything the rig and the patch of an input say connects what it should.</summary>
    public static bool IsWhole(AssignmentFacts facts)
    {
        var (rig, patch) = (facts.Rig, facts.Input.Patch);
        return facts.Before.Doubled.Count == 0
            && rig.Devices.Count == rig.Rig.Devices.Count
            && rig.Devices.All(device => device.Profile is not null)
            && patch.Streams.Select(stream => stream.Id).Distinct().Count() == patch.Streams.Count
            && patch.Streams.Select(stream => stream.From[0]).Distinct().Count() == patch.Streams.Count
            && patch.Streams.All(stream => IsWhole(rig, stream))
            && patch.Routes.All(route => IsWhole(rig, route))
            && rig.Rig.Links.All(rig.Connects)
            && !HasTwoLinesAtOneInput(facts.Input)
            && ResultCheck.HasWholeBlocks(facts)
            && rig.Rig.Cables.All(cable =>
                cable.From.Width == cable.To.Width
                && cable.From.Device != cable.To.Device
                && IsKind(rig, cable.From, PortKind.Output)
                && IsKind(rig, cable.To, PortKind.Input)
            );
    }

    private static bool HasTwoLinesAtOneInput(Show show)
    {
        var taken = new HashSet<Point>();
        return show.Lines.Any(line =>
            line.From.At.SelectMany(run => Enumerable.Range(0, run.Width).Select(i => run[i])).Distinct().ToList().Any(point => !taken.Add(point))
        );
    }

    private static bool IsWhole(RigFacts rig, AudioStream stream) =>
        IsKind(rig, stream.From, PortKind.Transmit)
        && rig.Group(stream.From)!.Model.Carrier is null
        && IsOnGrid(rig.Group(stream.From)!, stream.From)
        && stream.From.Width == rig.Group(stream.From)!.BlockSize
        && rig.Rig.Networks.Any(network => network.Id == stream.Network)
        && stream.To.All(receiver => IsWhole(rig, stream, receiver));

    private static bool IsWhole(RigFacts rig, AudioStream stream, StreamReceiver receiver)
    {
        if (!IsKind(rig, receiver.At, PortKind.Receive) || rig.Group(receiver.At) is not { Model.Carrier: null } group)
            return false;

        var channels = receiver.Channels ?? new NumberRange(1, stream.From.Width);
        return IsOnGrid(group, receiver.At)
            && channels.Width == receiver.At.Width
            && channels.Last <= stream.From.Width
            && (channels.First - 1) % group.BlockSize == 0
            && stream.From.Width % group.BlockSize == 0;
    }

    private static bool IsOnGrid(GroupFacts group, PointRange run) =>
        (run.First - 1) % group.BlockSize == 0 && run.Width % group.BlockSize == 0 && run.Last <= group.LastWhole;

    private static bool IsWhole(RigFacts rig, Route route) =>
        rig.Exists(route.To)
        && rig.Group(route.To)!.Kind is PortKind.Output or PortKind.Sink or PortKind.Transmit
        && (
            route.From is not { } from
            || (
                rig.Exists(from)
                && rig.Group(from)!.Kind is PortKind.Source or PortKind.Input or PortKind.Receive
                && from.Width == route.To.Width
                && from.Device == route.To.Device
            )
        );

    private static bool IsKind(RigFacts rig, PointRange run, PortKind kind) => rig.Exists(run) && rig.Group(run)!.Kind == kind;
}
