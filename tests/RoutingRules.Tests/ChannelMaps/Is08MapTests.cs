using System.Text;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.ChannelMaps;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.ChannelMaps.Is08Maps;

namespace RoutingRules.Tests.ChannelMaps;

/// <summary>Channel maps of AMWA IS-08.</summary>
/// <remarks>
/// Worked maps and the counts of legal maps: AMWA IS-08 v1.0.1, docs/Behaviour.md with its figures docs/images/map-examples/input-constraints-*.png, and
/// examples/io-get-200.json; see <c>External/BlockMapTests</c> and <c>External/RoutableInputCountTests</c> for what they say. Values of requests:
/// examples/map/map-activations-activation-get-200.json and map-activations-post-200.json of the repository AMWA-TV/is-08.
/// </remarks>
public sealed class Is08MapTests
{
    [Fact]
    public void A_map_is_written_whole_with_nulls_for_silence()
    {
        var show = Of(("card", Card(1, true))).With(Route("card/input/3-4", "card/a/1-2"));
        using var written = JsonDocument.Parse(Write(ChannelMap.Of(TestEngine, show, new("card"))));
        var action = written.RootElement.GetProperty("action");

        Assert.Equal("activate_immediate", written.RootElement.GetProperty("activation").GetProperty("mode").GetString());
        Assert.Equal(["a", "b"], action.EnumerateObject().Select(output => output.Name));
        Assert.Equal(["0", "1", "2", "3", "4", "5", "6", "7"], action.GetProperty("a").EnumerateObject().Select(channel => channel.Name));
        Assert.Equal("""{"input":"input","channel_index":2}""", Compact(action.GetProperty("a").GetProperty("0")));
        Assert.Equal("""{"input":null,"channel_index":null}""", Compact(action.GetProperty("b").GetProperty("7")));
    }

    [Fact]
    public void A_part_of_a_map_cuts_routes_where_it_says_something_else_and_leaves_the_others()
    {
        var show = Of(("card", Card(1, true))).With(Route("card/input/1-8", "card/a/1-8"), Route("card/input/9-10", "card/b/1-2"));
        var result = Apply(
            show,
            "card",
            """{ "map": { "a": { "2": { "input": null, "channel_index": null }, "3": { "input": "input", "channel_index": 60 },"""
                + """ "4": { "input": "input", "channel_index": 61 }, "7": { "input": "input", "channel_index": 7 } } } }"""
        );

        Assert.Empty(result.Problems);
        Assert.Equal(
            [
                Route("card/input/1-2", "card/a/1-2"),
                Route("card/input/6-8", "card/a/6-8"),
                Route("card/input/9-10", "card/b/1-2"),
                Route("card/input/61-62", "card/a/4-5"),
            ],
            result.Show!.Patch.Routes
        );
        Assert.Equal(
            [("card/a/3", null), ("card/a/4", "card/input/61"), ("card/a/5", "card/input/62")],
            result.Moves.Select(move => (move.At.ToString(), move.After?.ToString()))
        );
    }

    [Theory]
    [InlineData("""{ "action": { "z": { "0": { "input": null, "channel_index": null } } } }""", "has no such output; there are a, b")]
    [InlineData("""{ "action": { "a": { "8": { "input": null, "channel_index": null } } } }""", "the output has 8 channels, numbered 0 to 7")]
    [InlineData("""{ "action": { "a": { "0": { "input": "x", "channel_index": 0 } } } }""", "has no input 'x'; there are input")]
    [InlineData("""{ "action": { "a": { "0": { "input": "input", "channel_index": 64 } } } }""", "the input 'input' has 64 channels, numbered 0 to 63")]
    [InlineData("""{ "action": { "a": { "0": { "input": null, "channel_index": 3 } } } }""", "or null both for silence")]
    [InlineData("""{ "action": { "a": { "0": { "input": "input", "channel_index": -1 } } } }""", "whole number from 0")]
    [InlineData("""{ "action": { "a": { "0": { "input": "input" } } } }""", "input and channel_index belong here")]
    [InlineData("""{ "action": { "a": { "01": { "input": "input", "channel_index": 0 } } } }""", "without leading zeros")]
    [InlineData("""{ "action": { "a": { "0": { "input": "input", "channel_index": 0 }, "0": { "input": "input", "channel_index": 1 } } } }""", "stands twice")]
    [InlineData("""{ "action": { "a": 42 } }""", "an object with a member for each channel")]
    [InlineData("""{ "action": 42 }""", "no object action")]
    [InlineData("[]", "no object action")]
    [InlineData("{ \"action\":\n{", "Line 2: this is no sound JSON")]
    public void What_is_wrong_with_a_map_is_told_with_its_place(string text, string expected)
    {
        var result = Apply(Of(("card", Card(1, true))), "card", text);

        Assert.Null(result.Show);
        Assert.Contains(expected, Assert.Single(result.Problems), StringComparison.Ordinal);
    }

    [Fact]
    public void Fixed_sinks_and_devices_without_maps_are_refused()
    {
        var show = Of(("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));

        Assert.Contains(
            "always takes box/receive/1",
            Assert.Single(Apply(show, "box", """{ "action": { "out": { "0": { "input": "receive", "channel_index": 1 } } } }""").Problems),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "cannot be silenced",
            Assert.Single(Apply(show, "box", """{ "action": { "out": { "0": { "input": null, "channel_index": null } } } }""").Problems),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no device 'desk'; there are box, amp",
            Assert.Throws<ChannelMapException>(() => ChannelMap.Of(TestEngine, show, new("desk"))).Message,
            StringComparison.Ordinal
        );
        var torn = Of(("card", Card(8, true))).With(Route("card/input/1-3", "card/a/1-3"));
        Assert.Contains(
            "is patched as it cannot be",
            Assert.Throws<ChannelMapException>(() => ChannelMap.Of(TestEngine, torn, new("card"))).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "has a dot",
            Assert.Throws<ChannelMapException>(() => Write(new ChannelMap { Device = new("x"), Channels = [Entry("a.b", 0, "c", 0)] })).Message,
            StringComparison.Ordinal
        );
    }

    [Property(MaxTest = 60)]
    public Property A_map_that_comes_back_changes_nothing_and_makes_the_same_patch_anew() =>
        Promise.Of(
            ShowArbitraries.Valid(),
            show =>
            {
                foreach (var device in show.Rig.Devices.Select(device => device.Id))
                {
                    if (MapOf(show, device) is not { } map)
                    {
                        continue;
                    }

                    var read = Is08Map.Read(device, Write(map), out var problems);
                    var bare = show with { Patch = show.Patch with { Routes = show.Patch.Routes.Where(route => route.To.Device != device).ToValueList() } };
                    var same = MapImport.Apply(TestEngine, show, read);
                    var anew = MapImport.Apply(TestEngine, bare, read);
                    if (!problems.IsEmpty || map != read || !same.Edits.IsEmpty || same.Show is null)
                    {
                        return $"{device}: it does not come back as it was.";
                    }

                    if (anew.Show is null || MapOf(anew.Show, device) != map)
                    {
                        return $"{device}: made anew it is another; {string.Join(' ', anew.Problems)}";
                    }
                }

                return null;
            }
        );

    [Fact]
    public void The_shows_of_the_promise_have_maps() =>
        Assert.True(
            ShowArbitraries
                .Valid()
                .Generator.Sample(30, new Rnd(20270612), 20)
                .Count(show => show.Rig.Devices.Any(device => MapOf(show, device.Id)?.Channels.Any(channel => !channel.Input.IsNone) == true)) > 5
        );

    [Property(MaxTest = 60)]
    public Property What_a_map_asks_for_is_what_the_device_then_does() =>
        Prop.ForAll(
            (
                from sinks in Gen.Choose(0, 15).ArrayOf(6)
                from sources in Gen.Choose(-1, 63).ArrayOf(6)
                from again in Gen.Choose(-1, 63).ArrayOf(6)
                select (sinks, sources, again)
            ).ToArbitrary(),
            drawn =>
            {
                var show = Of(("card", Card(1, true)), ("other", Card(1, true))).With(Route("other/input/1-8", "other/b/1-8"));
                var expected = MapOf(show, new("card"))!.Channels.ToDictionary(channel => (channel.Output, channel.Channel));
                foreach (var sources in new[] { drawn.sources, drawn.again })
                {
                    var asked = drawn
                        .sinks.Zip(sources)
                        .DistinctBy(pair => pair.First)
                        .Select(pair => Entry(pair.First < 8 ? "a" : "b", pair.First % 8, pair.Second < 0 ? null : "input", Math.Max(0, pair.Second)))
                        .ToValueList();
                    var result = MapImport.Apply(TestEngine, show, new ChannelMap { Device = new("card"), Channels = asked });
                    foreach (var channel in asked)
                    {
                        expected[(channel.Output, channel.Channel)] = channel;
                    }

                    show = result.Show!;
                }

                return MapOf(show, new("card"))!
                        .Channels.SequenceEqual(
                            expected.Values.OrderBy(channel => channel.Output.Value, StringComparer.Ordinal).ThenBy(channel => channel.Channel)
                        )
                    && show.Patch.Routes[0] == Route("other/input/1-8", "other/b/1-8");
            }
        );

    // Field names and the rules of maps after IEEE 1722.1, 7.2.19; from memory.
    [Fact]
    public void Streams_are_told_as_mappings_of_stream_ports()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) is var rig
            ? rig.With(Stream("s0", "desk/transmit/1-4", "box/receive/5-8"), Stream("s1", "desk/transmit/5-8", "box/receive/1-4"))
            : null;
        using var output = new MemoryStream();
        StreamPortMap.Write(TestEngine, show!, new("box"), output);
        using var box = JsonDocument.Parse(output.ToArray());
        var port = box.RootElement.GetProperty("ports")[0];
        var mappings = port.GetProperty("mappings")
            .EnumerateArray()
            .Select(mapping =>
                (
                    mapping.GetProperty("mapping_stream_index").GetInt32(),
                    mapping.GetProperty("mapping_stream_channel").GetInt32(),
                    mapping.GetProperty("mapping_cluster_offset").GetInt32(),
                    mapping.GetProperty("mapping_cluster_channel").GetInt32()
                )
            )
            .ToList();

        Assert.Equal("STREAM_PORT_INPUT", port.GetProperty("descriptor_type").GetString());
        Assert.Equal([(1, 0, 0, 0), (1, 1, 1, 0), (1, 2, 2, 0), (1, 3, 3, 0), (0, 0, 4, 0), (0, 1, 5, 0), (0, 2, 6, 0), (0, 3, 7, 0)], mappings);
        Assert.All(mappings, mapping => Assert.InRange(mapping.Item3, 0, port.GetProperty("number_of_clusters").GetInt32() - 1));
    }

    private static MapImportResult Apply(Show show, string device, string text)
    {
        var map = Is08Map.Read(new(device), Encoding.UTF8.GetBytes(text), out var problems);
        return problems.IsEmpty ? MapImport.Apply(TestEngine, show, map) : new MapImportResult { Problems = problems };
    }

    /// <summary>The map of a device; null when it has none or is patched as it cannot be.</summary>
    private static ChannelMap? MapOf(Show show, Id<Device> device)
    {
        try
        {
            return ChannelMap.Of(TestEngine, show, device);
        }
        catch (ChannelMapException)
        {
            return null;
        }
    }

    private static string Compact(JsonElement element) => JsonSerializer.Serialize(element);

    private static DeviceProfile Card(int blockSize, bool reordering)
    {
        RoutingEntry To(string to) => SmallProfiles.Entry("input", to, RoutingMode.Block) with { BlockSize = blockSize, Reordering = reordering };
        return new()
        {
            Id = new("test/card"),
            Kind = DeviceKind.Processor,
            Name = "Card of 64 channels",
            PortGroups =
            [
                SmallProfiles.Group("input", PortKind.Source, 64),
                SmallProfiles.Group("a", PortKind.Output, 8),
                SmallProfiles.Group("b", PortKind.Output, 8),
            ],
            Routing = [To("a"), To("b")],
        };
    }
}
