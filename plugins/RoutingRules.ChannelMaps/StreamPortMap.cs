using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.ChannelMaps;

/// <summary>The streams of a device as audio mappings of its stream ports, by the field names of IEEE 1722.1 (from memory, after its 7.2.19).</summary>
/// <remarks>
/// A port for each group of receive or transmit slots, by direction and in profile order; slot n is the one-channel cluster at offset n − 1 of its port.
/// Streams are numbered from 0 as the document lists those that the device receives or sends. An input maps channels of streams to clusters, an output
/// clusters to channels of streams: what ADD_AUDIO_MAPPINGS would carry after a reset of the port.
/// </remarks>
public static class StreamPortMap
{
    /// <summary>Writes the mappings of a device.</summary>
    /// <param name="engine">Knows the profiles.</param>
    /// <param name="show">The show.</param>
    /// <param name="id">The device.</param>
    /// <param name="output">Where they are written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ChannelMapException">The show has no such device, its profile is not known, or the device has no slots.</exception>
    public static void Write(RoutingEngine engine, Show show, Id<Device> id, Stream output)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(output);
        var resolved = engine.Resolve(show);
        var device = Find(resolved, id);
        using (var json = new Utf8JsonWriter(output, MapText.Layout))
        {
            json.WriteStartObject();
            json.WriteString("device", id.Value);
            json.WriteStartArray("ports");
            WritePorts(json, resolved, device, PortKind.Receive);
            WritePorts(json, resolved, device, PortKind.Transmit);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    /// <exception cref="ChannelMapException">The show has no such device, its profile is not known, or the device has no slots.</exception>
    internal static DeviceNode Find(ResolvedShow show, Id<Device> id)
    {
        var device = ChannelMap.Find(show, id);
        return device.Groups.Any(IsPort)
            ? device
            : throw new ChannelMapException($"'{id}' has neither transmit nor receive slots, so it has no stream ports; name another device.");
    }

    private static bool IsPort(GroupNode group) => group.Kind is PortKind.Receive or PortKind.Transmit;

    private static void WritePorts(Utf8JsonWriter json, ResolvedShow show, DeviceNode device, PortKind kind)
    {
        var index = 0;
        foreach (var group in device.Groups.Where(group => group.Kind == kind))
        {
            var mappings = kind == PortKind.Receive ? Received(show, device, group) : Sent(show, device, group);
            json.WriteStartObject();
            json.WriteString("group", group.Id.Value);
            json.WriteString("descriptor_type", kind == PortKind.Receive ? "STREAM_PORT_INPUT" : "STREAM_PORT_OUTPUT");
            json.WriteNumber("descriptor_index", index++);
            json.WriteNumber("number_of_clusters", group.Count);
            json.WriteNumber("number_of_mappings", mappings.Count);
            json.WriteStartArray("mappings");
            foreach (var mapping in mappings)
            {
                json.WriteStartObject();
                json.WriteString("stream", mapping.Stream.Value);
                json.WriteNumber("mapping_stream_index", mapping.Index);
                json.WriteNumber("mapping_stream_channel", mapping.Channel);
                json.WriteNumber("mapping_cluster_offset", mapping.Cluster);
                json.WriteNumber("mapping_cluster_channel", 0);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }
    }

    /// <summary>The channels that the slots take. Each slot takes one at most, so the map keeps the rule of input maps.</summary>
    internal static List<StreamPortMapping> Received(ResolvedShow show, DeviceNode device, GroupNode group)
    {
        var streams = Numbered(show, device, PortKind.Receive);
        var mappings = new List<StreamPortMapping>();
        for (var slot = 0; slot < group.Count; slot++)
        {
            var at = device.First(group) + slot;
            if (show.Graph.Via(at) == HopKind.Stream && streams.FindIndex(stream => stream.Index == show.Graph.ViaIndex(at)) is >= 0 and var index)
            {
                mappings.Add(new StreamPortMapping(streams[index].Model.Id, index, show.Graph.Upstream(at).Value - streams[index].From.Value, slot));
            }
        }

        return mappings;
    }

    internal static List<StreamPortMapping> Sent(ResolvedShow show, DeviceNode device, GroupNode group)
    {
        var streams = Numbered(show, device, PortKind.Transmit);
        return
        [
            .. streams.SelectMany(
                (stream, index) =>
                    show.Graph.GroupOf(stream.From) != group
                        ? []
                        : Enumerable
                            .Range(0, stream.Model.From.Width)
                            .Select(channel => new StreamPortMapping(stream.Model.Id, index, channel, stream.From.Value + channel - device.First(group).Value))
            ),
        ];
    }

    /// <summary>The streams that a device receives or sends, in the order in which they are numbered.</summary>
    internal static List<StreamNode> Numbered(ResolvedShow show, DeviceNode device, PortKind kind) =>
        show
            .Streams.Where(stream =>
                kind == PortKind.Receive
                    ? stream.Receivers.Any(receiver => receiver.State == ConnectionState.Connected && show.Graph.DeviceOf(receiver.At) == device)
                    : !stream.From.IsNone && show.Graph.DeviceOf(stream.From) == device
            )
            .ToList();
}
