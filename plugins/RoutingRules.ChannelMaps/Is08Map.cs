using System.Globalization;
using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.ChannelMaps;

/// <summary>Channel maps as documents of AMWA IS-08 v1.0: the body of a request to activate a map.</summary>
/// <remarks>
/// <c>activation</c> asks for it at once; <c>action</c> holds an object for each output, in it one for each channel, by its number from 0 as text, with
/// <c>input</c> and <c>channel_index</c>, both null for silence (IS-08 v1.0.1, Behaviour, The Active Map and Activation Requests).
/// </remarks>
public static class Is08Map
{
    private const int MaxDepth = 16;

    /// <summary>Writes a map.</summary>
    /// <param name="map">The map.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ChannelMapException">The id of a port group has a dot, which ids of IS-08 cannot have.</exception>
    public static void Write(ChannelMap map, Stream output)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(output);
        foreach (var id in map.Channels.Select(channel => channel.Output).Concat(map.Channels.Select(channel => channel.Input)))
        {
            if (id.Value.Contains('.', StringComparison.Ordinal))
            {
                throw new ChannelMapException(
                    $"Ids of IS-08 hold letters, digits, hyphens and underscores only, and '{id}' has a dot; give the port group another id in the profile."
                );
            }
        }

        using (var json = new Utf8JsonWriter(output, MapText.Layout))
        {
            json.WriteStartObject();
            json.WriteStartObject("activation");
            json.WriteString("mode", "activate_immediate");
            json.WriteNull("requested_time");
            json.WriteEndObject();
            json.WriteStartObject("action");
            foreach (var group in map.Channels.GroupBy(channel => channel.Output))
            {
                json.WriteStartObject(group.Key.Value);
                foreach (var channel in group)
                {
                    WriteChannel(json, channel);
                }

                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    /// <summary>Reads a request to activate a map, or an active map as a device gives it (<c>map</c> in the place of <c>action</c>).</summary>
    /// <param name="device">The device it is for.</param>
    /// <param name="utf8Json">The document, with or without a byte order mark. When it is to be activated is not read.</param>
    /// <param name="problems">What is wrong with its form, each with its place; empty when all is well.</param>
    /// <returns>The channels that could be read; whether the device has them, <see cref="MapImport"/> says.</returns>
    public static ChannelMap Read(Id<Device> device, ReadOnlyMemory<byte> utf8Json, out ValueList<string> problems)
    {
        var found = new List<string>();
        var channels = new List<MapChannel>();
        MapText.Read(
            utf8Json,
            MaxDepth,
            found,
            root =>
            {
                if (Action(root) is { } action)
                {
                    ReadOutputs(action, channels, found);
                }
                else
                {
                    found.Add("The document has no object action, as a request to activate a map has, and no object map, as an active map has.");
                }
            }
        );
        problems = found.ToValueList();
        return new ChannelMap { Device = device, Channels = channels.ToValueList() };
    }

    private static void WriteChannel(Utf8JsonWriter json, MapChannel channel)
    {
        json.WriteStartObject(channel.Channel.ToString(CultureInfo.InvariantCulture));
        if (channel.Input.IsNone)
        {
            json.WriteNull("input");
            json.WriteNull("channel_index");
        }
        else
        {
            json.WriteString("input", channel.Input.Value);
            json.WriteNumber("channel_index", channel.InputChannel);
        }

        json.WriteEndObject();
    }

    private static JsonElement? Action(JsonElement root)
    {
        foreach (var name in new[] { "action", "map" })
        {
            if (root.ValueKind == JsonValueKind.Object && root.TryGetProperty(name, out var action) && action.ValueKind == JsonValueKind.Object)
            {
                return action;
            }
        }

        return null;
    }

    private static void ReadOutputs(JsonElement action, List<MapChannel> channels, List<string> problems)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var output in action.EnumerateObject())
        {
            if (output.Value.ValueKind != JsonValueKind.Object || output.Name.Length == 0)
            {
                problems.Add($"Output '{output.Name}': an object with a member for each channel belongs here.");
                continue;
            }

            foreach (var channel in output.Value.EnumerateObject())
            {
                var place = $"Output '{output.Name}', channel '{channel.Name}'";
                if (
                    !int.TryParse(channel.Name, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                    || number.ToString(CultureInfo.InvariantCulture) != channel.Name
                )
                {
                    problems.Add($"{place}: channels are numbered from 0, in digits without leading zeros.");
                }
                else if (!seen.Add($"{output.Name}/{channel.Name}"))
                {
                    problems.Add($"{place} stands twice; keep one of the two.");
                }
                else if (ReadChannel(channel.Value, new Id<PortGroup>(output.Name), number) is { } read)
                {
                    channels.Add(read);
                }
                else
                {
                    problems.Add($"{place}: input and channel_index belong here, a text and a whole number from 0, or null both for silence.");
                }
            }
        }
    }

    private static MapChannel? ReadChannel(JsonElement entry, Id<PortGroup> output, int number)
    {
        if (
            entry.ValueKind != JsonValueKind.Object
            || entry.EnumerateObject().Count() != 2
            || !entry.TryGetProperty("input", out var input)
            || !entry.TryGetProperty("channel_index", out var index)
        )
        {
            return null;
        }

        return (input.ValueKind, index.ValueKind) switch
        {
            (JsonValueKind.Null, JsonValueKind.Null) => new MapChannel { Output = output, Channel = number },
            (JsonValueKind.String, JsonValueKind.Number) when input.GetString() is { Length: > 0 } name && index.TryGetInt32(out var channel) && channel >= 0 =>
                new MapChannel
                {
                    Output = output,
                    Channel = number,
                    Input = new(name),
                    InputChannel = channel,
                },
            _ => null,
        };
    }
}
