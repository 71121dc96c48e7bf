using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>The points whose signal is heard in somebody's ears as the input stands: found by going up from every end.</summary>
internal sealed class EarFacts
{
    private readonly HashSet<Point> heard = [];

    public EarFacts(RigFacts rig, PatchTrace before)
    {
        foreach (var end in rig.Devices.SelectMany(device => device.Groups).Where(IsEar).SelectMany(group => Enumerable.Range(1, group.Count).Select(group.At)))
        {
            // A headphone output that plays what the maker chose is the device's own.
            var isOwn =
                rig.Group(end)!.Model.Level == SignalLevel.Headphone && rig.Kind(end) == PortKind.Output && before.Upstream(end) is { Kind: StepKind.Factory };
            for (Point? point = isOwn ? null : end; point is { } at && heard.Add(at); point = before.Upstream(at)?.From) { }
        }
    }

    /// <summary>True for a point that is heard there.</summary>
    public bool Hear(Point point) => heard.Contains(point);

    private static bool IsEar(GroupFacts group) =>
        (group.Model.InEar && group.Kind is PortKind.Input or PortKind.Receive or PortKind.Sink or PortKind.Output)
        || (group.Kind == PortKind.Output && group.Model.Level == SignalLevel.Headphone)
        || (group.Device.IsKind(DeviceKind.TransmitterRack) && IsLast(group));

    private static bool IsLast(GroupFacts group) =>
        group.Kind switch
        {
            PortKind.Input or PortKind.Receive or PortKind.Sink => !Joins(
                group,
                static (entry, id) => entry.From == id,
                static entry => entry.To,
                static kind => kind is PortKind.Sink or PortKind.Output
            ),
            PortKind.Output => Joins(
                group,
                static (entry, id) => entry.To == id,
                static entry => entry.From,
                static kind => kind is PortKind.Input or PortKind.Receive
            ),
            _ => false,
        };

    private static bool Joins(
        GroupFacts group,
        Func<RoutingEntry, Id<PortGroup>, bool> isMeant,
        Func<RoutingEntry, Id<PortGroup>> other,
        Func<PortKind, bool> isKind
    ) => group.Device.Profile!.Routing.Any(entry => isMeant(entry, group.Model.Id) && group.Device.Group(other(entry)) is { } far && isKind(far.Kind));
}
