using System.Text;
using System.Text.Json.Nodes;
using RoutingRules.ChannelMaps;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.ChannelMaps;

/// <summary>Mappings of stream ports read back. Field names and the rule of one channel to a cluster after IEEE 1722.1, 7.2.19; from memory.</summary>
public class StreamPortImportTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static Show Rig =>
        new()
        {
            Title = "Ports",
            Rig = new Rig
            {
                Networks =
                [
                    new()
                    {
                        Id = new("net"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                    },
                ],
                Profiles = [SmallProfiles.Console, SmallProfiles.Box],
                Devices = [new() { Id = new("desk"), Profile = SmallProfiles.Console.Id }, new() { Id = new("box"), Profile = SmallProfiles.Box.Id }],
            },
            Patch = new Patch
            {
                Streams =
                [
                    new()
                    {
                        Id = new("s0"),
                        Network = new("net"),
                        From = PointRange.Parse("desk/transmit/1-4"),
                        To = [new() { At = PointRange.Parse("box/receive/5-8") }],
                    },
                    new()
                    {
                        Id = new("s1"),
                        Network = new("net"),
                        From = PointRange.Parse("desk/transmit/5-8"),
                        To = [new() { At = PointRange.Parse("box/receive/1-4") }],
                    },
                ],
            },
        };

    [Theory]
    [InlineData("box")]
    [InlineData("desk")]
    public void What_was_written_comes_back_and_changes_nothing(string device)
    {
        var result = StreamPortImport.Apply(Engine, Rig, new(device), Encoding.UTF8.GetBytes(Written(device).ToJsonString()));

        Assert.Empty(result.Problems);
        Assert.Empty(result.Edits);
        Assert.Equal(Rig, result.Show);
    }

    [Fact]
    public void Receivers_exchanged_in_the_map_are_exchanged_in_the_show()
    {
        var map = Written("box");
        foreach (var mapping in Mappings(map))
            mapping["mapping_cluster_offset"] = ((int)mapping["mapping_cluster_offset"]! + 4) % 8;

        var result = StreamPortImport.Apply(Engine, Rig, new("box"), Encoding.UTF8.GetBytes(map.ToJsonString()));

        Assert.Empty(result.Problems);
        Assert.Equal(["box/receive/1-4", "box/receive/5-8"], result.Show!.Patch.Streams.Select(stream => stream.To.Single().At.ToString()));
        Assert.Equal(8, result.Moves.Count);
        Assert.Equal(
            ("box/receive/1", "desk/transmit/5", "desk/transmit/1"),
            (result.Moves[0].At.ToString(), result.Moves[0].Before.ToString(), result.Moves[0].After.ToString())
        );
        Assert.Equal(result.Show, result.Edits.Aggregate(Rig, (show, edit) => edit.Apply(show)!));
    }

    // A device itself knows neither ids of groups nor of streams.
    [Fact]
    public void Ports_and_streams_may_be_numbered_only()
    {
        var map = Written("box");
        map.Remove("device");
        map["ports"]![0]!.AsObject().Remove("group");
        foreach (var mapping in Mappings(map))
        {
            mapping.AsObject().Remove("stream");
            mapping["mapping_cluster_offset"] = ((int)mapping["mapping_cluster_offset"]! + 4) % 8;
        }

        var result = StreamPortImport.Apply(
            Engine,
            Rig,
            new("box"),
            new byte[] { 0xEF, 0xBB, 0xBF }
                .Concat(Encoding.UTF8.GetBytes(map.ToJsonString()))
                .ToArray()
        );

        Assert.Equal(["box/receive/1-4", "box/receive/5-8"], result.Show!.Patch.Streams.Select(stream => stream.To.Single().At.ToString()));
    }

    [Fact]
    public void An_empty_port_takes_nothing_and_the_streams_stay()
    {
        var map = Written("box");
        map["ports"]![0]!["mappings"] = new JsonArray();

        var result = StreamPortImport.Apply(Engine, Rig, new("box"), Encoding.UTF8.GetBytes(map.ToJsonString()));

        Assert.Equal([0, 0], result.Show!.Patch.Streams.Select(stream => stream.To.Count));
    }

    [Theory]
    [InlineData("mapping_cluster_offset", 8, "the port has clusters 0 to 7")]
    [InlineData("mapping_cluster_offset", 1, "the cluster takes a channel already")]
    [InlineData("mapping_cluster_offset", -1, "whole numbers from 0")]
    [InlineData("mapping_cluster_channel", 1, "of one channel, numbered 0")]
    [InlineData("mapping_stream_channel", 4, "the stream 's1' has channels 0 to 3")]
    [InlineData("stream", 3, "the show has no such stream here")]
    public void What_the_device_cannot_do_is_told_with_its_place(string member, int value, string expected)
    {
        var map = Written("box");
        Mappings(map).First()[member] = value;

        var result = StreamPortImport.Apply(Engine, Rig, new("box"), Encoding.UTF8.GetBytes(map.ToJsonString()));

        Assert.Null(result.Show);
        Assert.Contains("Port 0 ('receive'), mapping ", Assert.Single(result.Problems), StringComparison.Ordinal);
        Assert.Contains(expected, result.Problems[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}", "no array ports")]
    [InlineData("[", "Line 1: this is no sound JSON")]
    [InlineData("{ \"device\": \"desk\", \"ports\": [] }", "The map is of the device \"desk\", not of 'box'")]
    [InlineData("{ \"ports\": [ 3 ] }", "Port 0: descriptor_type is")]
    [InlineData(
        "{ \"ports\": [ { \"descriptor_type\": \"STREAM_PORT_INPUT\", \"descriptor_index\": 4 } ] }",
        "no such port of this direction; there are receive"
    )]
    [InlineData("{ \"ports\": [ { \"descriptor_type\": \"STREAM_PORT_INPUT\", \"descriptor_index\": 0 } ] }", "an array mappings belongs here")]
    public void Malformed_maps_are_told(string text, string expected)
    {
        var result = StreamPortImport.Apply(Engine, Rig, new("box"), Encoding.UTF8.GetBytes(text));

        Assert.Contains(expected, Assert.Single(result.Problems), StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_device_sends_must_be_what_the_show_says()
    {
        var map = Written("desk");
        foreach (var mapping in Mappings(map).Where(mapping => (string?)mapping["stream"] == "s0"))
            mapping["mapping_cluster_offset"] = (int)mapping["mapping_cluster_offset"]! + 8;

        var result = StreamPortImport.Apply(Engine, Rig, new("desk"), Encoding.UTF8.GetBytes(map.ToJsonString()));

        Assert.Null(result.Show);
        Assert.Contains(result.Problems, problem => problem.Contains("stream 's0'", StringComparison.Ordinal));
    }

    private static JsonObject Written(string device)
    {
        using var output = new MemoryStream();
        StreamPortMap.Write(Engine, Rig, new(device), output);
        return JsonNode.Parse(output.ToArray())!.AsObject();
    }

    private static IEnumerable<JsonNode> Mappings(JsonObject map) =>
        map["ports"]!.AsArray().SelectMany(port => port!["mappings"]!.AsArray()).Select(mapping => mapping!).ToList();
}
