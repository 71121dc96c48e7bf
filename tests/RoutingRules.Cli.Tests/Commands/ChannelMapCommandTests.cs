using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>export</c> and <c>import</c> of channel maps.</summary>
public sealed class ChannelMapCommandTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_map_goes_out_and_comes_back_without_a_change()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        Assert.Equal(0, Tool.Run("export", path, "--map", "is-08", "--device", "desk", "--no-config", "--out", folder.At("map.json")).Civil().Code);
        var result = Tool.Run("import", path, folder.At("map.json"), "--map", "is-08", "--device", "desk", "--no-config").Civil();
        var transmit = JsonDocument.Parse(File.ReadAllText(folder.At("map.json"))).RootElement.GetProperty("action").GetProperty("transmit");

        Assert.Equal((0, Shows.Small), (result.Code, result.Out));
        Assert.Contains(" 0 take something else", result.Error, StringComparison.Ordinal);
        Assert.Equal("aux", transmit.GetProperty("0").GetProperty("input").GetString());
        Assert.Equal(0, transmit.GetProperty("0").GetProperty("channel_index").GetInt32());
        Assert.Equal(JsonValueKind.Null, transmit.GetProperty("1").GetProperty("input").ValueKind);
    }

    [Fact]
    public void A_change_is_told_and_written_into_the_text()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var map = folder.Write("map.json", """{ "action": { "transmit": { "1": { "input": "aux", "channel_index": 1 } } } }""");
        var dry = Tool.Run("import", path, map, "--map", "is-08", "--device", "desk", "--no-config", "--dry-run").Civil();
        var result = Tool.Run("import", path, map, "--map", "is-08", "--device", "desk", "--no-config").Civil();

        Assert.Equal($"{path}: of 1 channels in the map 1 take something else\n  desk/transmit/2: desk/aux/2 instead of silence\n", dry.Out);
        Assert.Equal(0, result.Code);
        Assert.Contains("{ \"from\": null, \"to\": \"desk/transmit/3-8\" }", result.Out, StringComparison.Ordinal);
        Assert.Equal(["a.show.json", "map.json"], folder.Names);
    }

    [Fact]
    public void Stream_ports_are_written()
    {
        var result = Tool.Run(["export", "-", "--map", "1722.1", "--device", "box", "--no-config"], Encoding.UTF8.GetBytes(Shows.Small)).Civil();
        var port = JsonDocument.Parse(result.Out).RootElement.GetProperty("ports")[0];

        Assert.Equal(0, result.Code);
        Assert.Equal("STREAM_PORT_INPUT", port.GetProperty("descriptor_type").GetString());
        Assert.Equal(4, port.GetProperty("number_of_mappings").GetInt32());

        var back = Tool.Run(
                "import",
                folder.Write("SMALL", Shows.Small),
                folder.Write("PORTS", result.Out),
                "--map",
                "1722.1",
                "--device",
                "box",
                "--no-config",
                "--dry-run"
            )
            .Civil();
        Assert.Equal(0, back.Code);
        Assert.EndsWith("SMALL: 0 take something else", back.Out.TrimEnd(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cannot be had together", "export", "SHOW", "--map", "is-08", "--device", "desk", "--list", "feeds")]
    [InlineData("name it with --device", "export", "SHOW", "--map", "is-08")]
    [InlineData("--device is for --map", "export", "SHOW", "--list", "feeds", "--device", "desk")]
    [InlineData("--map takes is-08 or 1722.1, not 'x'", "export", "SHOW", "--map", "x", "--device", "desk")]
    [InlineData("are for lists", "export", "SHOW", "--map", "is-08", "--device", "desk", "--utf8-mark")]
    [InlineData("are for lists", "import", "SHOW", "MAP", "--map", "is-08", "--device", "desk", "--remove-absent")]
    [InlineData("no device 'dsk'; there are desk, box", "export", "SHOW", "--map", "is-08", "--device", "dsk")]
    [InlineData("no device 'dsk'; there are desk, box", "import", "SHOW", "MAP", "--map", "is-08", "--device", "dsk")]
    [InlineData("no device 'dsk'; there are desk, box", "export", "SHOW", "--map", "1722.1", "--device", "dsk")]
    [InlineData("no array ports", "import", "SHOW", "MAP", "--map", "1722.1", "--device", "desk")]
    [InlineData(
        "MAP: Output 'out', channel 0: box/out/1 always takes box/receive/1",
        "import",
        "SHOW",
        "MAP",
        "--map",
        "is-08",
        "--device",
        "box",
        "--out",
        "NEW"
    )]
    [InlineData("this is no sound JSON", "import", "SHOW", "BAD", "--map", "is-08", "--device", "box", "--in-place")]
    [InlineData("this is no sound JSON", "import", "SHOW", "WIDE", "--map", "is-08", "--device", "box")]
    public void Wrong_usage_and_bad_maps_end_with_two_and_write_nothing(string expected, params string[] arguments)
    {
        folder.Write("SHOW", Shows.Small);
        folder.Write("MAP", """{ "action": { "out": { "0": { "input": "receive", "channel_index": 3 } } } }""");
        folder.Write("BAD", "{ \"action\": ");
        folder.Write("WIDE", Encoding.Unicode.GetBytes("{ }"));
        var names = folder.Names;
        var result = Tool.Run([.. arguments.Select(argument => names.Contains(argument) || argument == "NEW" ? folder.At(argument) : argument)]).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Equal(names, folder.Names);
        Assert.Equal(Shows.Small, File.ReadAllText(folder.At("SHOW")));
    }
}
