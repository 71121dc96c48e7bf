using RoutingRules.Documents.Tables;
using RoutingRules.Profiles;

namespace RoutingRules.Documents.Formats;

/// <summary>Tables of device profiles.</summary>
internal static class ProfileTables
{
    private static readonly ObjectTable<RoutingEntry> Routing = CreateRouting();
    private static readonly ObjectTable<ThroughEntry> Through = CreateThrough();
    private static readonly ObjectTable<FactoryRoute> FactoryRoute = CreateFactoryRoute();
    private static readonly ObjectTable<ProfileLimits> Limits = CreateLimits();
    private static readonly ObjectTable<GroupLatency> Latency = CreateLatency();

    public static IdKind<DeviceProfile> Id { get; } = new(parts: 3);

    public static ObjectTable<DeviceProfile> Profile { get; } = CreateProfile();

    private static ObjectTable<RoutingEntry> CreateRouting()
    {
        var table = new TableBuilder<RoutingEntry>("routingEntry", "routing entry", "What one group may feed in another.");
        var from = table.Required("from", Kinds.Id<PortGroup>(), static entry => entry.From, "The group of sources.");
        var to = table.Required("to", Kinds.Id<PortGroup>(), static entry => entry.To, "The group of sinks.");
        var mode = table.Required(
            "mode",
            new ClosedWordKind<RoutingMode>("routingMode", ("free", RoutingMode.Free), ("block", RoutingMode.Block), ("fixed", RoutingMode.Fixed)),
            static entry => entry.Mode,
            "How freely: free, whole blocks only, or fixed (sink i always takes source i)."
        );
        var blockSize = table.OptionalValue(
            "blockSize",
            Kinds.CountFromOne,
            static entry => entry.BlockSize,
            "For mode block: how many channels move together (IS-08 block_size)."
        );
        var reordering = table.Default(
            "reordering",
            Kinds.Bool,
            false,
            static entry => entry.Reordering,
            "For mode block: whether the offset may differ from block to block (IS-08 reordering)."
        );
        var clearable = table.Default("clearable", Kinds.Bool, false, static entry => entry.Clearable, "For mode fixed: whether a sink can be set to nothing.");
        return table.Build(
            (in Slots read) =>
                new RoutingEntry
                {
                    From = from[read],
                    To = to[read],
                    Mode = mode[read],
                    BlockSize = blockSize[read],
                    Reordering = reordering[read],
                    Clearable = clearable[read],
                }
        );
    }

    private static ObjectTable<ThroughEntry> CreateThrough()
    {
        var table = new TableBuilder<ThroughEntry>("throughEntry", "through entry", "A path through a device, position i to position i.");
        var kind = table.Required(
            "kind",
            new ClosedWordKind<ThroughKind>("throughKind", ("process", ThroughKind.Process), ("passive", ThroughKind.Passive), ("select", ThroughKind.Select)),
            static entry => entry.Kind,
            "Signal processing, a passive split, or one leg of a selector."
        );
        var from = table.Required("from", Kinds.Id<PortGroup>(), static entry => entry.From, "The group where signal enters.");
        var to = table.Required("to", Kinds.Id<PortGroup>(), static entry => entry.To, "The group where it leaves.");
        var phantom = table.Default("phantom", Kinds.Bool, false, static entry => entry.Phantom, "Whether phantom power passes.");
        var latency = table.OptionalValue("latencyMilliseconds", Kinds.Milliseconds, static entry => entry.LatencyMilliseconds, "Latency in milliseconds.");
        return table.Build(
            (in Slots read) =>
                new ThroughEntry
                {
                    Kind = kind[read],
                    From = from[read],
                    To = to[read],
                    Phantom = phantom[read],
                    LatencyMilliseconds = latency[read],
                }
        );
    }

    private static ObjectTable<FactoryRoute> CreateFactoryRoute()
    {
        var table = new TableBuilder<FactoryRoute>("factoryRoute", "factory route", "Routes that stand until something overrides them, position by position.");
        var from = table.Required("from", Kinds.GroupRange, static route => route.From, "The sources.");
        var to = table.Required("to", Kinds.GroupRange, static route => route.To, "The sinks, as many as sources.");
        return table.Build((in Slots read) => new FactoryRoute { From = from[read], To = to[read] });
    }

    private static ObjectTable<ProfileLimits> CreateLimits()
    {
        var table = new TableBuilder<ProfileLimits>("profileLimits", "limits", "Limits of a device.");
        var sent = table.OptionalValue("streamsSent", Kinds.Count, static limits => limits.StreamsSent, "How many transmit blocks it can send.");
        var received = table.OptionalValue(
            "streamsReceived",
            Kinds.Count,
            static limits => limits.StreamsReceived,
            "How many different streams it can receive."
        );
        var hops = table.OptionalValue("hops", Kinds.Count, static limits => limits.Hops, "How many network hops it allows.");
        var labelLength = table.OptionalValue("labelLength", Kinds.CountFromOne, static limits => limits.LabelLength, "How many characters it shows.");
        return table.Build(
            (in Slots read) =>
                new ProfileLimits
                {
                    StreamsSent = sent[read],
                    StreamsReceived = received[read],
                    Hops = hops[read],
                    LabelLength = labelLength[read],
                }
        );
    }

    private static ObjectTable<GroupLatency> CreateLatency()
    {
        var table = new TableBuilder<GroupLatency>("groupLatency", "latency entry", "Latency of a port group.");
        var group = table.Required("group", Kinds.Id<PortGroup>(), static entry => entry.Group, "The group.");
        var value = table.Required("value", Kinds.Milliseconds, static entry => entry.Value, "Latency in milliseconds.");
        return table.Build((in Slots read) => new GroupLatency { Group = group[read], Value = value[read] });
    }

    private static ObjectTable<DeviceProfile> CreateProfile()
    {
        var table = new TableBuilder<DeviceProfile>("deviceProfile", "profile", "The reusable description of a device type.");
        var id = table.Required("id", Id, static profile => profile.Id, "The id that devices name: up to three parts joined by slashes.");
        var version = table.Default(
            "version",
            new IntKind(1, 999_999),
            1,
            static profile => profile.Version,
            "The version of the profile, from 1. Absent means 1."
        );
        var kind = table.Required(
            "kind",
            new OpenWordKind<DeviceKind>(
                "a kind of device",
                static word => new DeviceKind(word),
                static word => word.Value,
                "stage-box",
                KnownWords.DeviceKinds
            ),
            static profile => profile.Kind,
            "The kind of device: console, stage-box, amplifier, processor, recorder, transmitter-rack, receiver-rack, split, switch, loudspeaker, "
                + "or another word."
        );
        var name = table.Required("name", Kinds.FilledText, static profile => profile.Name, "What people call the type.");
        var portGroups = table.RequiredList(
            "portGroups",
            PortGroupTables.PortGroup,
            static profile => profile.PortGroups,
            "The numbered runs of points, in order."
        );
        var routing = table.List("routing", Routing, static profile => profile.Routing, "What may feed what inside the device.");
        var through = table.List("through", Through, static profile => profile.Through, "Paths through processing, passive splits and selectors.");
        var factoryRoutes = table.List(
            "factoryRoutes",
            FactoryRoute,
            static profile => profile.FactoryRoutes,
            "Routes the device has until something overrides them."
        );
        var limits = table.Optional("limits", Limits, static profile => profile.Limits, "Limits of the device.");
        var latency = table.List("latencyMilliseconds", Latency, static profile => profile.LatencyMilliseconds, "Latency of port groups.");
        var sampleRates = table.List(
            "sampleRates",
            Kinds.SampleRate,
            static profile => profile.SampleRates,
            "Sample rates it can run at, in hertz. Absent means that it does not matter."
        );
        var notes = table.Optional("notes", Kinds.Text, static profile => profile.Notes, "Anything a person should know.");
        var extensions = table.Extensions(static profile => profile.Extensions);
        return table.Build(
            (in Slots read) =>
                new DeviceProfile
                {
                    Id = id[read],
                    Version = version[read],
                    Kind = kind[read],
                    Name = name[read],
                    PortGroups = portGroups[read],
                    Routing = routing[read],
                    Through = through[read],
                    FactoryRoutes = factoryRoutes[read],
                    Limits = limits[read],
                    LatencyMilliseconds = latency[read],
                    SampleRates = sampleRates[read],
                    Notes = notes[read],
                    Extensions = extensions[read],
                }
        );
    }
}
