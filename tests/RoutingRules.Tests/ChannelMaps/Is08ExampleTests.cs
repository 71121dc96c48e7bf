using System.Text;
using FsCheck.Fluent;
using RoutingRules.ChannelMaps;
using RoutingRules.Model;
using RoutingRules.Tests.External;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.ChannelMaps.Is08Maps;

namespace RoutingRules.Tests.ChannelMaps;

/// <summary>The worked examples of the standard.</summary>
public sealed class Is08ExampleTests
{
    [Theory]
    [MemberData(nameof(BlockMapTests.Maps), MemberType = typeof(BlockMapTests))]
    public void The_worked_maps_are_taken_exactly_where_the_standard_says_so(
        string name,
        string map,
        bool freeAny,
        bool freeKept,
        bool blockAny,
        bool blockKept
    )
    {
        Assert.NotEmpty(name);
        Assert.Equal([freeAny, freeKept, blockAny, blockKept], [Takes(map, 1, true), Takes(map, 1, false), Takes(map, 8, true), Takes(map, 8, false)]);
    }

    [Fact]
    public void The_example_device_takes_95_maps_of_its_first_output_and_76_without_silence()
    {
        string?[] inputs = [null, .. Names("input1", 4), .. Names("input2", 6), .. Names("input3", 2), .. Names("input4", 3)];
        var show = Of(("io", RoutableInputCountTests.Device));
        var taken = (from first in inputs from second in inputs where Takes(show, Document("output1", first, second)) select (first, second)).ToList();

        Assert.Equal(256, inputs.Length * inputs.Length);
        Assert.Equal(95, taken.Count);
        Assert.Equal(76, taken.Count(map => map.first is not null && map.second is not null));
    }

    [Theory]
    [InlineData("2:0", "input2", 1, 1)]
    [InlineData("1544448739:0", "input1", 2, 1)]
    public void The_requests_of_the_examples_are_read_as_they_mean(string time, string input, int first, int second)
    {
        var text = $$"""
            { "activation": { "mode": "activate_scheduled_relative", "requested_time": "{{time}}", "activation_time": "1544448736:0" },
              "action": { "OutA": { "0": { "input": "{{input}}", "channel_index": {{first}} }, "3": { "input": "{{input}}", "channel_index": {{second}} } } } }
            """;
        var map = Is08Map.Read(new("x"), Encoding.UTF8.GetBytes(text), out var problems);

        Assert.Empty(problems);
        Assert.Equal([Entry("OutA", 0, input, first), Entry("OutA", 3, input, second)], map.Channels);
    }

    private static bool Takes(string map, int blockSize, bool reordering)
    {
        var channels = map.Split(' ')
            .SelectMany(part =>
            {
                var sides = part[2..].Split('>').Select(side => side.Split('-').Select(int.Parse).ToArray()).ToArray();
                return Enumerable.Range(0, sides[0][1] - sides[0][0] + 1).Select(i => Entry(part[..1], sides[1][0] + i, "input", sides[0][0] + i));
            });
        var bytes = Write(
            new ChannelMap { Device = new("card"), Channels = channels.OrderBy(channel => channel.Output.Value, StringComparer.Ordinal).ToValueList() }
        );
        return Takes(Of(("card", BlockMapTests.Card(blockSize, reordering))), bytes);
    }

    private static bool Takes(Show show, byte[] document)
    {
        var map = Is08Map.Read(show.Rig.Devices[0].Id, document, out var problems);
        Assert.Empty(problems);
        return MapImport.Apply(TestEngine, show, map).Show is not null;
    }

    private static byte[] Document(string output, params string?[] inputs) =>
        Write(
            new ChannelMap
            {
                Device = new("io"),
                Channels = inputs
                    .Select((input, channel) => Entry(output, channel, input?.Split('/')[0], input is null ? 0 : int.Parse(input.Split('/')[1])))
                    .ToValueList(),
            }
        );

    private static IEnumerable<string> Names(string input, int count) => Enumerable.Range(0, count).Select(channel => $"{input}/{channel}");
}
