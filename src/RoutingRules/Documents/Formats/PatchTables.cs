using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>Tables of the patch.</summary>
internal static class PatchTables
{
    public static ObjectTable<StreamReceiver> Receiver { get; } = CreateReceiver();

    public static ObjectTable<AudioStream> Stream { get; } = CreateStream();

    public static ObjectTable<Route> Route { get; } = CreateRoute();

    public static ObjectTable<InputSettings> Input { get; } = CreateInput();

    public static ObjectTable<PointLabel> Label { get; } = CreateLabel();

    public static ObjectTable<Patch> Patch { get; } = CreatePatch();

    private static ObjectTable<StreamReceiver> CreateReceiver()
    {
        var table = new TableBuilder<StreamReceiver>("streamReceiver", "receiver", "One receiver of a stream.");
        var at = table.Required("at", Kinds.PointRange, static receiver => receiver.At, "The receive slots.");
        var channels = table.OptionalValue(
            "channels",
            Kinds.NumberRange,
            static receiver => receiver.Channels,
            "The stream channels it takes. Absent means all."
        );
        var extensions = table.Extensions(static receiver => receiver.Extensions);
        return table.Build(
            (in Slots read) =>
                new StreamReceiver
                {
                    At = at[read],
                    Channels = channels[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<AudioStream> CreateStream()
    {
        var table = new TableBuilder<AudioStream>("stream", "stream", "A block of transmit slots sent to any number of receivers.");
        var id = table.Required("id", Kinds.Id<AudioStream>(), static stream => stream.Id, "The id that findings name.");
        var network = table.Required("network", Kinds.Id<Network>(), static stream => stream.Network, "The network it travels on.");
        var from = table.Required("from", Kinds.PointRange, static stream => stream.From, "The transmit slots; stream channel c is slot first + c - 1.");
        var to = table.List("to", Receiver, static stream => stream.To, "The receivers.");
        var keep = table.Default(
            "keep",
            Kinds.Bool,
            false,
            static stream => stream.Keep,
            "Whether an assignment must keep it although no feed or line uses it."
        );
        var label = table.Optional("label", Kinds.Text, static stream => stream.Label, "What people call it.");
        var extensions = table.Extensions(static stream => stream.Extensions);
        return table.Build(
            (in Slots read) =>
                new AudioStream
                {
                    Id = id[read],
                    Network = network[read],
                    From = from[read],
                    To = to[read],
                    Keep = keep[read],
                    Label = label[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Route> CreateRoute()
    {
        var table = new TableBuilder<Route>("route", "route", "Inside one device, a sink takes its signal from a source, position by position.");
        var from = table.Required(
            "from",
            new NullableKind<PointRange>(Kinds.PointRange, nullable: true),
            static route => route.From,
            "The sources; null clears the sinks."
        );
        var to = table.Required("to", Kinds.PointRange, static route => route.To, "The sinks, as many as sources.");
        var extensions = table.Extensions(static route => route.Extensions);
        return table.Build(
            (in Slots read) =>
                new Route
                {
                    From = from[read],
                    To = to[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<InputSettings> CreateInput()
    {
        var table = new TableBuilder<InputSettings>("inputSettings", "input entry", "Phantom and gain of a run of inputs.");
        var at = table.Required("at", Kinds.PointRange, static input => input.At, "The inputs.");
        var phantom = table.OptionalValue(
            "phantom",
            Kinds.Bool,
            static input => input.Phantom,
            "Whether phantom power is switched on. Absent means that nothing was said."
        );
        var owner = table.OptionalValue("gainOwner", Kinds.Id<Device>(), static input => input.GainOwner, "The console that sets the gain.");
        var followers = table.List("gainFollowers", Kinds.Id<Device>(), static input => input.GainFollowers, "Consoles that follow with digital trim.");
        var extensions = table.Extensions(static input => input.Extensions);
        return table.Build(
            (in Slots read) =>
                new InputSettings
                {
                    At = at[read],
                    Phantom = phantom[read],
                    GainOwner = owner[read],
                    GainFollowers = followers[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<PointLabel> CreateLabel()
    {
        var table = new TableBuilder<PointLabel>("pointLabel", "label", "A text shown at a point.");
        var at = table.Required("at", Kinds.PointRange, static label => label.At, "The point or points.");
        var text = table.Required("text", Kinds.Text, static label => label.Text, "The text.");
        var extensions = table.Extensions(static label => label.Extensions);
        return table.Build(
            (in Slots read) =>
                new PointLabel
                {
                    At = at[read],
                    Text = text[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Patch> CreatePatch()
    {
        var table = new TableBuilder<Patch>("patch", "patch", "Routes and streams, with the settings of inputs and the labels that go with them.");
        var streams = table.List("streams", Stream, static patch => patch.Streams, "Network streams.");
        var routes = table.List("routes", Route, static patch => patch.Routes, "Routes inside devices; of several at one sink the first counts.");
        var inputs = table.List("inputs", Input, static patch => patch.Inputs, "Phantom and gain of inputs.");
        var labels = table.List("labels", Label, static patch => patch.Labels, "Texts shown at points.");
        var extensions = table.Extensions(static patch => patch.Extensions);
        return table.Build(
            (in Slots read) =>
                new Patch
                {
                    Streams = streams[read],
                    Routes = routes[read],
                    Inputs = inputs[read],
                    Labels = labels[read],
                    Extensions = extensions[read],
                }
        );
    }
}
