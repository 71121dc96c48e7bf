using RoutingRules.Documents.Tables;
using RoutingRules.Profiles;

namespace RoutingRules.Documents.Formats;

/// <summary>Tables of the port groups of a profile.</summary>
internal static class PortGroupTables
{
    private static readonly ObjectTable<RateCount> RateCount = CreateRateCount();
    private static readonly ObjectTable<BridgedJacks> Bridged = CreateBridged();

    public static ObjectTable<PortGroup> PortGroup { get; } = CreatePortGroup();

    private static ObjectTable<RateCount> CreateRateCount()
    {
        var table = new TableBuilder<RateCount>("rateCount", "count entry", "How many points a group has at a sample rate.");
        var sampleRate = table.Required("sampleRate", Kinds.SampleRate, static entry => entry.SampleRate, "Sample rate in hertz.");
        var count = table.Required("count", Kinds.Count, static entry => entry.Count, "How many points.");
        return table.Build((in Slots read) => new RateCount { SampleRate = sampleRate[read], Count = count[read] });
    }

    private static ObjectTable<BridgedJacks> CreateBridged()
    {
        var table = new TableBuilder<BridgedJacks>("bridgedJacks", "bridged entry", "Network jacks that are one switch.");
        var jacks = table.Required("jacks", Kinds.NumberRange, static entry => entry.Jacks, "The numbers of the jacks.");
        return table.Build((in Slots read) => new BridgedJacks { Jacks = jacks[read] });
    }

    private static ObjectTable<PortGroup> CreatePortGroup()
    {
        var table = new TableBuilder<PortGroup>("portGroup", "port group", "A numbered run of points of one kind on a device.");
        var id = table.Required("id", Kinds.Id<PortGroup>(), static group => group.Id, "The id that addresses name.");
        var kind = table.Required(
            "kind",
            new ClosedWordKind<PortKind>(
                "portKind",
                ("source", PortKind.Source),
                ("sink", PortKind.Sink),
                ("input", PortKind.Input),
                ("output", PortKind.Output),
                ("transmit", PortKind.Transmit),
                ("receive", PortKind.Receive),
                ("network", PortKind.Network)
            ),
            static group => group.Kind,
            "What the points are: source and sink are internal, input and output are connectors, transmit and receive are network slots, network are jacks."
        );
        var count = table.OptionalValue("count", Kinds.CountFromOne, static group => group.Count, "How many points.");
        var countByRate = table.List(
            "countByRate",
            RateCount,
            static group => group.CountByRate,
            "How many points at which sample rate; in place of count.",
            min: 1
        );
        var connector = table.OptionalValue(
            "connector",
            new OpenWordKind<Connector>("a connector", static word => new Connector(word), static word => word.Value, "xlr-socket", KnownWords.InputConnectors),
            static group => group.Connector,
            "The connector: xlr-socket, xlr-pins, jack, speaker-connector, rj45, bnc, fibre, multipin, or another word."
        );
        var channels = table.Default(
            "channelsPerConnector",
            new IntKind(1, 1024),
            1,
            static group => group.ChannelsPerConnector,
            "How many channels share one connector. Absent means 1."
        );
        var panelLabels = table.List(
            "panelLabels",
            Kinds.Text,
            static group => group.PanelLabels,
            "What the panel prints at each point, first to last. Absent means the number."
        );
        var level = table.OptionalValue(
            "level",
            new OpenWordKind<SignalLevel>("a level", static word => new SignalLevel(word), static word => word.Value, "line", KnownWords.Levels),
            static group => group.Level,
            "The level or kind of signal: mic, line, speaker, aes3, headphone, or another word."
        );
        var isolated = table.Default("isolated", Kinds.Bool, false, static group => group.Isolated, "Whether the connectors are isolated by transformers.");
        var phantom = table.Default("phantom", Kinds.Bool, false, static group => group.Phantom, "Whether the inputs can supply phantom power.");
        var paired = table.Default("paired", Kinds.Bool, false, static group => group.Paired, "Whether odd and even neighbours are pairs in hardware.");
        var inEar = table.Default(
            "inEar",
            Kinds.Bool,
            false,
            static group => group.InEar,
            "Whether somebody hears with earpieces or headphones what arrives here: a pack on a cable, a headphone amplifier."
        );
        var blockSize = table.OptionalValue(
            "blockSize",
            Kinds.CountFromOne,
            static group => group.BlockSize,
            "How many slots travel together. Absent means 1."
        );
        var carrier = table.OptionalValue(
            "carrier",
            new GroupRangeKind(single: true),
            static group => group.Carrier,
            "The network jack these slots live on, for a digital multicore whose link is the stream."
        );
        var rateConverter = table.Default(
            "rateConverter",
            Kinds.Bool,
            false,
            static group => group.RateConverter,
            "Whether a sample rate converter sits at the group."
        );
        var bridged = table.List("bridged", Bridged, static group => group.Bridged, "Which network jacks are one switch.");
        var labelLength = table.OptionalValue(
            "labelLength",
            Kinds.CountFromOne,
            static group => group.LabelLength,
            "How many characters the device shows at these points."
        );
        var extensions = table.Extensions(static group => group.Extensions);
        table.ExactlyOne([count], [countByRate]);
        return table.Build(
            (in Slots read) =>
                new PortGroup
                {
                    Id = id[read],
                    Kind = kind[read],
                    Count = count[read],
                    CountByRate = countByRate[read],
                    Connector = connector[read],
                    ChannelsPerConnector = channels[read],
                    PanelLabels = panelLabels[read],
                    Level = level[read],
                    Isolated = isolated[read],
                    Phantom = phantom[read],
                    Paired = paired[read],
                    InEar = inEar[read],
                    BlockSize = blockSize[read],
                    Carrier = carrier[read],
                    RateConverter = rateConverter[read],
                    Bridged = bridged[read],
                    LabelLength = labelLength[read],
                    Extensions = extensions[read],
                }
        );
    }
}
