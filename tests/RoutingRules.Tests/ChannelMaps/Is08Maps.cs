using RoutingRules.ChannelMaps;

namespace RoutingRules.Tests.ChannelMaps;

/// <summary>What tests of channel maps share.</summary>
internal static class Is08Maps
{
    public static readonly RoutingEngine TestEngine = RoutingEngine.CreateBuilder().Build();

    public static byte[] Write(ChannelMap map)
    {
        using var output = new MemoryStream();
        Is08Map.Write(map, output);
        return output.ToArray();
    }

    public static MapChannel Entry(string output, int channel, string? input, int index) =>
        input is null
            ? new MapChannel { Output = new(output), Channel = channel }
            : new MapChannel
            {
                Output = new(output),
                Channel = channel,
                Input = new(input),
                InputChannel = index,
            };
}
