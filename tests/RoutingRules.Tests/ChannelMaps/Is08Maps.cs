using System.Text;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.ChannelMaps;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.External;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

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
