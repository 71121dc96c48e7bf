using System.Text;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reading;

namespace RoutingRules.Tests.Documents;

public sealed class ProfileReaderTests
{
    private const string Box = """
        { "id": "generic/box", "version": 3, "kind": "stage-box", "name": "Box",
          "portGroups": [
            { "id": "in", "kind": "input", "count": 20, "connector": "xlr-socket", "level": "mic", "phantom": true, "panelLabels": [ "A", "" ] },
            { "id": "transmit", "kind": "transmit", "countByRate": [ { "sampleRate": 48000, "count": 20 }, { "sampleRate": 96000, "count": 0 } ],
              "blockSize": 4, "carrier": "net/1" },
            { "id": "net", "kind": "network", "count": 2, "bridged": [ { "jacks": "1-2" } ] } ],
          "routing": [ { "from": "in", "to": "transmit", "mode": "fixed", "clearable": true },
            { "from": "in", "to": "out", "mode": "block", "blockSize": 4, "reordering": true } ],
          "through": [ { "kind": "select", "from": "in", "to": "out", "phantom": true, "latencyMilliseconds": 0.5 } ],
          "factoryRoutes": [ { "from": "in/1-4", "to": "transmit/1-4" } ],
          "limits": { "streamsSent": 5, "streamsReceived": 0, "hops": 7, "labelLength": 12 },
          "latencyMilliseconds": [ { "group": "in", "value": 0 } ], "sampleRates": [ 48000, 96000 ], "notes": "n" }
        """;

    [Fact]
    public void Every_member_arrives_where_it_belongs()
    {
        var read = Read(Box);

        Assert.Empty(read.Findings);
        var expected = new DeviceProfile
        {
            Id = new("generic/box"),
            Version = 3,
            Kind = DeviceKind.StageBox,
            Name = "Box",
            PortGroups =
            [
                new PortGroup
                {
                    Id = new("in"),
                    Kind = PortKind.Input,
                    Count = 20,
                    Connector = Connector.XlrSocket,
                    Level = SignalLevel.Mic,
                    Phantom = true,
                    PanelLabels = ["A", ""],
                },
                new PortGroup
                {
                    Id = new("transmit"),
                    Kind = PortKind.Transmit,
                    CountByRate = [new RateCount { SampleRate = 48000, Count = 20 }, new RateCount { SampleRate = 96000, Count = 0 }],
                    BlockSize = 4,
                    Carrier = new GroupRange(new("net"), 1, 1),
                },
                new PortGroup
                {
                    Id = new("net"),
                    Kind = PortKind.Network,
                    Count = 2,
                    Bridged = [new BridgedJacks { Jacks = new NumberRange(1, 2) }],
                },
            ],
            Routing =
            [
                new RoutingEntry
                {
                    From = new("in"),
                    To = new("transmit"),
                    Mode = RoutingMode.Fixed,
                    Clearable = true,
                },
                new RoutingEntry
                {
                    From = new("in"),
                    To = new("out"),
                    Mode = RoutingMode.Block,
                    BlockSize = 4,
                    Reordering = true,
                },
            ],
            Through =
            [
                new ThroughEntry
                {
                    Kind = ThroughKind.Select,
                    From = new("in"),
                    To = new("out"),
                    Phantom = true,
                    LatencyMilliseconds = 0.5,
                },
            ],
            FactoryRoutes = [new FactoryRoute { From = new GroupRange(new("in"), 1, 4), To = new GroupRange(new("transmit"), 1, 4) }],
            Limits = new ProfileLimits
            {
                StreamsSent = 5,
                StreamsReceived = 0,
                Hops = 7,
                LabelLength = 12,
            },
            LatencyMilliseconds = [new GroupLatency { Group = new("in"), Value = 0 }],
            SampleRates = [48000, 96000],
            Notes = "n",
        };
        Assert.Equal(expected, read.Value);
        Assert.Equal(expected, ProfileReader.Read(ProfileWriter.ToUtf8(expected)).Value);
    }

    [Theory]
    [InlineData("\"count\": 4", "")]
    [InlineData("\"countByRate\": [ { \"sampleRate\": 48000, \"count\": 4 } ]", "")]
    [InlineData("\"count\": 4, \"countByRate\": [ { \"sampleRate\": 48000, \"count\": 4 } ]", "RR1008")]
    [InlineData("\"phantom\": true", "RR1008")]
    [InlineData("\"countByRate\": []", "RR1006")]
    [InlineData("\"count\": 0", "RR1006")]
    [InlineData("\"count\": 65536", "RR1006")]
    [InlineData("\"count\": 4, \"carrier\": \"net/1-2\"", "RR1007")]
    [InlineData("\"count\": 4, \"carrier\": \"net/1-1\"", "RR1007")]
    [InlineData("\"count\": 4, \"bridged\": [ { \"jacks\": 2 } ]", "RR1005")]
    [InlineData("\"count\": 4, \"bridged\": [ { \"jacks\": \"2\" } ]", "")]
    [InlineData("\"count\": 4, \"blockSize\": 0", "RR1006")]
    [InlineData("\"count\": 4, \"level\": \"Mic\"", "RR1007")]
    public void A_port_group_says_how_many_points_it_has_in_one_way(string members, string rule)
    {
        var read = Read($$"""{"id":"p","kind":"console","name":"n","portGroups":[{"id":"g","kind":"input",{{members}}}]}""");

        Assert.Equal(rule, string.Join(",", read.Findings.Select(finding => finding.Rule)));
    }

    [Fact]
    public void Port_groups_must_be_there_but_may_be_none()
    {
        Assert.True(Read("""{"id":"p","kind":"split","name":"n","portGroups":[]}""").IsUsable);
        Assert.Equal("/portGroups", Assert.Single(Read("""{"id":"p","kind":"split","name":"n"}""").Findings).Pointer);
    }

    [Fact]
    public void A_missing_file_is_a_finding() => Assert.Equal("RR1001", Assert.Single(ProfileReader.ReadFile("/nowhere/p.json").Findings).Rule);

    private static ReadResult<DeviceProfile> Read(string text) => ProfileReader.Read(Encoding.UTF8.GetBytes(text));
}
