using System.Globalization;
using System.Text.Json;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.ChannelMaps;

/// <summary>Reads mappings of stream ports, and tells with its place whatever the device or the show has not.</summary>
/// <remarks>
/// A port is found by its <c>group</c>, or by direction and <c>descriptor_index</c>; a stream by its id under <c>stream</c>, or by
/// <c>mapping_stream_index</c>, so that what a device itself gives can be read too.
/// </remarks>
internal sealed class StreamPortReader(ResolvedShow show, DeviceNode device)
{
    private readonly List<string> problems = [];

    public IReadOnlyList<string> Problems => problems;

    /// <summary>The mappings of each port named, by its group.</summary>
    public Dictionary<GroupNode, List<StreamPortMapping>> Read(ReadOnlyMemory<byte> utf8Json)
    {
        var found = new Dictionary<GroupNode, List<StreamPortMapping>>();
        MapText.Read(utf8Json, 8, problems, root => ReadPorts(root, found));
        return found;
    }

    private void ReadPorts(JsonElement root, Dictionary<GroupNode, List<StreamPortMapping>> found)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("ports", out var ports) || ports.ValueKind != JsonValueKind.Array)
        {
            problems.Add("The document has no array ports, in which the mappings of each stream port stand.");
            return;
        }

        if (root.TryGetProperty("device", out var named) && (named.ValueKind != JsonValueKind.String || named.GetString() != device.Id.Value))
        {
            problems.Add($"The map is of the device {named.GetRawText()}, not of '{device.Id}'; name that one, or take the member device out.");
        }

        foreach (var (index, port) in ports.EnumerateArray().Index())
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"Port {index}");
            if (GroupOf(port, place) is not { } group)
            {
                continue;
            }

            if (!found.TryAdd(group, []))
            {
                problems.Add($"{place}: the port of '{group.Id}' is there twice; join the two.");
            }
            else if (!port.TryGetProperty("mappings", out var mappings) || mappings.ValueKind != JsonValueKind.Array)
            {
                problems.Add($"{place}: an array mappings belongs here, empty for none.");
            }
            else
            {
                ReadMappings(mappings, group, place, found[group]);
            }
        }
    }

    private GroupNode? GroupOf(JsonElement port, string place)
    {
        var kind =
            port.ValueKind == JsonValueKind.Object && port.TryGetProperty("descriptor_type", out var type) && type.ValueKind == JsonValueKind.String
                ? type.GetString()
                : null;
        if (kind is not ("STREAM_PORT_INPUT" or "STREAM_PORT_OUTPUT"))
        {
            problems.Add($"{place}: descriptor_type is STREAM_PORT_INPUT or STREAM_PORT_OUTPUT.");
            return null;
        }

        var groups = device.Groups.Where(group => group.Kind == (kind == "STREAM_PORT_INPUT" ? PortKind.Receive : PortKind.Transmit)).ToList();
        var group =
            port.TryGetProperty("group", out var named) ? groups.Find(group => named.ValueKind == JsonValueKind.String && named.GetString() == group.Id.Value)
            : Number(port, "descriptor_index") is { } index && index < groups.Count ? groups[index]
            : null;
        if (group is null)
        {
            problems.Add(
                $"{place}: '{device.Id}' has no such port of this direction; there are "
                    + $"{(groups.Count == 0 ? "none" : string.Join(", ", groups.Select(each => each.Id)))}."
            );
        }

        return group;
    }

    private void ReadMappings(JsonElement mappings, GroupNode group, string port, List<StreamPortMapping> into)
    {
        var numbered = StreamPortMap.Numbered(show, device, group.Kind);
        var seen = new HashSet<(int, int)>();
        foreach (var (at, mapping) in mappings.EnumerateArray().Index())
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"{port} ('{group.Id}'), mapping {at}");
            if (
                mapping.ValueKind != JsonValueKind.Object
                || Number(mapping, "mapping_stream_channel") is not { } channel
                || Number(mapping, "mapping_cluster_offset") is not { } cluster
                || Number(mapping, "mapping_cluster_channel") is not { } clusterChannel
            )
            {
                problems.Add($"{place}: mapping_stream_channel, mapping_cluster_offset and mapping_cluster_channel are whole numbers from 0.");
            }
            else if (StreamOf(mapping, numbered) is not { } stream)
            {
                problems.Add(
                    $"{place}: the show has no such stream here; name it under stream, or number it under mapping_stream_index from 0 to "
                        + $"{Last(numbered.Count)}."
                );
            }
            else if (channel >= stream.Model.From.Width)
            {
                problems.Add($"{place}: the stream '{stream.Model.Id}' has channels 0 to {Last(stream.Model.From.Width)}.");
            }
            else if (cluster >= group.Count || clusterChannel != 0)
            {
                problems.Add($"{place}: the port has clusters 0 to {Last(group.Count)} of one channel, numbered 0.");
            }
            else if (!seen.Add(group.Kind == PortKind.Receive ? (cluster, 0) : (stream.Index, channel)))
            {
                problems.Add(
                    group.Kind == PortKind.Receive
                        ? $"{place}: the cluster takes a channel already, and one is all it can take."
                        : $"{place}: the channel of the stream is mapped already."
                );
            }
            else
            {
                into.Add(new StreamPortMapping(stream.Model.Id, stream.Index, channel, cluster));
            }
        }
    }

    private StreamNode? StreamOf(JsonElement mapping, List<StreamNode> numbered)
    {
        if (mapping.TryGetProperty("stream", out var named))
        {
            return named.ValueKind == JsonValueKind.String ? show.Streams.FirstOrDefault(stream => stream.Model.Id.Value == named.GetString()) : null;
        }

        return Number(mapping, "mapping_stream_index") is { } index && index < numbered.Count ? numbered[index] : null;
    }

    private static string Last(int count) => (count - 1).ToString(CultureInfo.InvariantCulture);

    private static int? Number(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) && number >= 0
            ? number
            : null;
}
