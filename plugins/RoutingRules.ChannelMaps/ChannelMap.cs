using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.ChannelMaps;

/// <summary>What feeds what inside one device: its routable port groups as outputs and inputs of a channel map.</summary>
/// <remarks>Outputs of the map are the groups that the profile routes something to, inputs those it routes from; both by the ids of the groups.</remarks>
public sealed record ChannelMap
{
    internal const string NotAllowed = "RR2005";
    internal const string BlockBroken = "RR2006";

    /// <summary>The device.</summary>
    public required Id<Device> Device { get; init; }

    /// <summary>The channels, by output and number; an output need not be whole.</summary>
    public required ValueList<MapChannel> Channels { get; init; }

    /// <summary>The map of a device as it is patched, every channel of every output.</summary>
    /// <param name="engine">Knows the profiles and rules.</param>
    /// <param name="show">The show.</param>
    /// <param name="device">The device.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ChannelMapException">
    /// The show has no such device, its profile is not known, or it is patched as the profile does not allow, such as with a torn block.
    /// </exception>
    public static ChannelMap Of(RoutingEngine engine, Show show, Id<Device> device)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(show);
        var resolved = engine.Resolve(show);
        var node = Find(resolved, device);
        if (engine.Check(resolved).Findings.FirstOrDefault(finding => IsAbout(finding, device)) is { } broken)
        {
            throw new ChannelMapException($"'{device}' is patched as it cannot be: {broken.Message} {broken.Remedy}");
        }

        var channels = new List<MapChannel>();
        foreach (var group in Outputs(node))
        {
            for (var channel = 0; channel < group.Count; channel++)
            {
                var sink = node.First(group) + channel;
                if (resolved.Graph.Via(sink) != HopKind.Through)
                {
                    channels.Add(Of(resolved.Graph, group, channel, Source(resolved.Graph, node, sink)));
                }
            }
        }

        return new ChannelMap { Device = device, Channels = channels.ToValueList() };
    }

    internal static DeviceNode Find(ResolvedShow show, Id<Device> id)
    {
        if (show.Graph.Device(id) is not { } device)
        {
            throw new ChannelMapException(
                $"The show has no device '{id}'; there are {string.Join(", ", show.Document.Rig.Devices.Select(known => known.Id))}."
            );
        }

        if (device.ProfileState != ProfileState.Found)
        {
            throw new ChannelMapException(
                $"The profile of '{id}' cannot be used, so its port groups are not known; correct the profile, or give the folder that holds it."
            );
        }

        return Outputs(device).Any()
            ? device
            : throw new ChannelMapException($"Nothing can be routed inside '{id}', so it has no channel map; name another device.");
    }

    /// <summary>The groups that something is routed to, in profile order.</summary>
    internal static IEnumerable<GroupNode> Outputs(DeviceNode device) =>
        device.Groups.Where(group => device.Profile.Routing.Any(entry => entry.To == group.Id));

    /// <summary>The groups that something is routed from, in profile order.</summary>
    internal static IEnumerable<GroupNode> Inputs(DeviceNode device) =>
        device.Groups.Where(group => device.Profile.Routing.Any(entry => entry.From == group.Id));

    /// <summary>The point of the device that feeds a sink by a route of any kind; none for silence.</summary>
    internal static PointIndex Source(SignalGraph graph, DeviceNode device, PointIndex sink) =>
        graph.Via(sink) is HopKind.Fixed or HopKind.Factory or HopKind.Route
        && graph.Upstream(sink) is { IsNone: false } source
        && graph.DeviceOf(source) == device
            ? source
            : PointIndex.None;

    /// <summary>True for findings about routes of the device that its profile does not allow.</summary>
    internal static bool IsAbout(Rules.Finding finding, Id<Device> device) =>
        finding.Rule is NotAllowed or BlockBroken && finding.Entities.Any(entity => entity.Id.StartsWith($"{device}/", StringComparison.Ordinal));

    private static MapChannel Of(SignalGraph graph, GroupNode output, int channel, PointIndex source) =>
        source.IsNone
            ? new MapChannel { Output = output.Id, Channel = channel }
            : new MapChannel
            {
                Output = output.Id,
                Channel = channel,
                Input = graph.GroupOf(source).Id,
                InputChannel = graph.NumberOf(source) - 1,
            };
}
