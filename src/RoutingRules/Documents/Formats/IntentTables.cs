using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>Tables of feeds and lines: what somebody wants to arrive where.</summary>
internal static class IntentTables
{
    private static readonly ClosedWordKind<Priority> PriorityWord = new(
        "priority",
        ("critical", Priority.Critical),
        ("high", Priority.High),
        ("normal", Priority.Normal),
        ("low", Priority.Low)
    );

    private static readonly ObjectTable<Destination> Destination = CreateDestination();
    private static readonly ObjectTable<Separation> Separation = CreateSeparation();
    private static readonly ObjectTable<LineOrigin> Origin = CreateOrigin();

    public static ObjectTable<Feed> Feed { get; } = CreateFeed();

    public static ObjectTable<Line> Line { get; } = CreateLine();

    private static ObjectTable<Destination> CreateDestination()
    {
        var table = new TableBuilder<Destination>(
            "destination",
            "destination",
            "One place a feed shall reach: either pinned points or any of some devices and zones."
        );
        var at = table.OptionalValue(
            "at",
            Kinds.PointRange,
            static place => place.At,
            "The pinned sink: an output, a cabled input, a receive slot or a channel."
        );
        var devices = table.List("devices", Kinds.Id<Device>(), static place => place.Devices, "Any of these devices.", min: 1);
        var zones = table.List("zones", Kinds.Id<Zone>(), static place => place.Zones, "Any device in these zones; together with devices a union.", min: 1);
        var extensions = table.Extensions(static place => place.Extensions);
        table.ExactlyOne([at], [devices, zones]);
        return table.Build(
            (in Slots read) =>
                new Destination
                {
                    At = at[read],
                    Devices = devices[read],
                    Zones = zones[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Separation> CreateSeparation()
    {
        var table = new TableBuilder<Separation>("separation", "separation", "A feed to stay apart from.");
        var feed = table.Required("feed", Kinds.Id<Feed>(), static entry => entry.Feed, "The other feed.");
        var by = table.Required(
            "by",
            new ClosedWordKind<SeparationBy>("separationBy", ("device", SeparationBy.Device), ("power", SeparationBy.Power), ("link", SeparationBy.Link)),
            static entry => entry.By,
            "What the two must not share."
        );
        var extensions = table.Extensions(static entry => entry.Extensions);
        return table.Build(
            (in Slots read) =>
                new Separation
                {
                    Feed = feed[read],
                    By = by[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Feed> CreateFeed()
    {
        var table = new TableBuilder<Feed>("feed", "feed", "An intention: this bus, or pair of buses, shall reach these destinations.");
        var id = table.Required("id", Kinds.Id<Feed>(), static feed => feed.Id, "The id that demands and findings name.");
        var name = table.Optional("name", Kinds.Text, static feed => feed.Name, "What people call the mix.");
        var role = table.Default(
            "role",
            new OpenWordKind<FeedRole>("a role", static word => new FeedRole(word), static word => word.Value, "monitor", KnownWords.Roles),
            FeedRole.Utility,
            static feed => feed.Role,
            "What it is for: main, sub, fill, delay, monitor, in-ear, record, broadcast, assistive, talkback, comms, click, utility, evacuation, "
                + "or another word. Absent means utility."
        );
        var set = table.Optional("set", Kinds.SharedText, static feed => feed.Set, "The set of feeds it belongs to, such as the left and right mains.");
        var part = table.Optional("part", Kinds.SharedText, static feed => feed.Part, "Its part of the set: left, right, centre, low and so on.");
        var source = table.Required("source", Kinds.PointRange, static feed => feed.Source, "The bus; two make a pair, left then right.");
        var to = table.RequiredList("to", Destination, static feed => feed.To, "Where it shall arrive; one demand for each entry.", min: 1);
        var priority = table.Default(
            "priority",
            PriorityWord,
            Priority.Normal,
            static feed => feed.Priority,
            "What is dropped last when not everything fits. Absent means normal."
        );
        var preferred = table.OptionalValue(
            "preferred",
            Kinds.PointNumber,
            static feed => feed.Preferred,
            "The wanted number of the first point in its group."
        );
        var hold = table.OptionalValue(
            "hold",
            Kinds.Bool,
            static feed => feed.Hold,
            "Whether an existing placement must stay. Absent means true for the roles main and in-ear."
        );
        var group = table.Optional("group", Kinds.SharedText, static feed => feed.Group, "Feeds of one group belong on one device.");
        var spread = table.Default("spread", Kinds.Bool, false, static feed => feed.Spread, "Whether two entries must sit on different devices.");
        var separateFrom = table.List(
            "separateFrom",
            Separation,
            static feed => feed.SeparateFrom,
            "Feeds that must not share a device, supply or link with this one."
        );
        var backupOf = table.OptionalValue("backupOf", Kinds.Id<Feed>(), static feed => feed.BackupOf, "The feed this one backs up.");
        var limiter = table.OptionalValue(
            "limiter",
            Kinds.Bool,
            static feed => feed.Limiter,
            "Whether a limiter is declared in the path. Absent means that nothing was said."
        );
        var delay = table.OptionalValue(
            "delayMilliseconds",
            new DecimalNumberKind(100_000, positive: false),
            static feed => feed.DelayMilliseconds,
            "The delay set on purpose, in milliseconds, for fills and delay loudspeakers. Absent means that nothing was said."
        );
        var over = table.Optional(
            "override",
            Kinds.Text,
            static feed => feed.Override,
            "For evacuation: what puts it over everything else, and where, such as a relay before the amplifiers."
        );
        var person = table.Optional("person", Kinds.Text, static feed => feed.Person, "Who listens to it, by part rather than by name.");
        var pack = table.Optional("pack", Kinds.Text, static feed => feed.Pack, "The receiver pack, for in-ear feeds.");
        var position = table.Optional("position", Kinds.Text, static feed => feed.Position, "Where on stage.");
        var notes = table.Optional("notes", Kinds.Text, static feed => feed.Notes, "Anything a person should know.");
        var extensions = table.Extensions(static feed => feed.Extensions);
        return table.Build(
            (in Slots read) =>
                new Feed
                {
                    Id = id[read],
                    Name = name[read],
                    Role = role[read],
                    Set = set[read],
                    Part = part[read],
                    Source = source[read],
                    To = to[read],
                    Priority = priority[read],
                    Preferred = preferred[read],
                    Hold = hold[read],
                    Group = group[read],
                    Spread = spread[read],
                    SeparateFrom = separateFrom[read],
                    BackupOf = backupOf[read],
                    Limiter = limiter[read],
                    Person = person[read],
                    DelayMilliseconds = delay[read],
                    Override = over[read],
                    Pack = pack[read],
                    Position = position[read],
                    Notes = notes[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<LineOrigin> CreateOrigin()
    {
        var table = new TableBuilder<LineOrigin>(
            "lineOrigin",
            "origin",
            "Where a line enters: pinned inputs, any of some devices and zones, or a signal born in a device."
        );
        var at = table.List("at", Kinds.PointRange, static origin => origin.At, "Pinned inputs; several when an analogue split feeds several boxes.", min: 1);
        var devices = table.List("devices", Kinds.Id<Device>(), static origin => origin.Devices, "Any of these devices.", min: 1);
        var zones = table.List("zones", Kinds.Id<Zone>(), static origin => origin.Zones, "Any device in these zones; together with devices a union.", min: 1);
        var source = table.OptionalValue(
            "source",
            Kinds.PointRange,
            static origin => origin.Source,
            "A signal born on the network or in a device, such as a wireless rack or a player."
        );
        var extensions = table.Extensions(static origin => origin.Extensions);
        table.ExactlyOne([at], [source], [devices, zones]);
        return table.Build(
            (in Slots read) =>
                new LineOrigin
                {
                    At = at[read],
                    Devices = devices[read],
                    Zones = zones[read],
                    Source = source[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Line> CreateLine()
    {
        var table = new TableBuilder<Line>("line", "line", "An intention: this stage source shall reach these console channels.");
        var id = table.Required("id", Kinds.Id<Line>(), static line => line.Id, "The id that demands and findings name.");
        var name = table.Optional("name", Kinds.Text, static line => line.Name, "What people call the source.");
        var kind = table.Required(
            "kind",
            new ClosedWordKind<LineKind>("lineKind", ("microphone", LineKind.Microphone), ("line", LineKind.Line)),
            static line => line.Kind,
            "Microphone or line level."
        );
        var phantom = table.Default(
            "phantom",
            new ClosedWordKind<PhantomNeed>(
                "phantomNeed",
                ("required", PhantomNeed.Required),
                ("forbidden", PhantomNeed.Forbidden),
                ("either", PhantomNeed.Either)
            ),
            PhantomNeed.Either,
            static line => line.Phantom,
            "Whether it wants phantom power (IEC 61938). Absent means either."
        );
        var width = table.Default("width", new IntKind(1, 2), 1, static line => line.Width, "1 for mono, 2 for a pair, left then right. Absent means 1.");
        var from = table.Required("from", Origin, static line => line.From, "Where it enters.");
        var to = table.RequiredList("to", Kinds.PointRange, static line => line.To, "The sinks it shall reach, each as wide as the line.", min: 1);
        var priority = table.Default(
            "priority",
            PriorityWord,
            Priority.Normal,
            static line => line.Priority,
            "What is dropped last when not everything fits. Absent means normal."
        );
        var preferred = table.OptionalValue(
            "preferred",
            Kinds.PointNumber,
            static line => line.Preferred,
            "The wanted number of the first input in its group."
        );
        var hold = table.OptionalValue("hold", Kinds.Bool, static line => line.Hold, "Whether an existing placement must stay. Absent means false.");
        var group = table.Optional("group", Kinds.SharedText, static line => line.Group, "Lines of one group belong on one device.");
        var equipment = table.Optional("equipment", Kinds.Text, static line => line.Equipment, "Microphone, direct box or other equipment.");
        var stand = table.Optional("stand", Kinds.Text, static line => line.Stand, "The stand.");
        var position = table.Optional("position", Kinds.Text, static line => line.Position, "Where on stage.");
        var suppliedBy = table.Optional("suppliedBy", Kinds.Text, static line => line.SuppliedBy, "Who brings it.");
        var notes = table.Optional("notes", Kinds.Text, static line => line.Notes, "Anything a person should know.");
        var extensions = table.Extensions(static line => line.Extensions);
        return table.Build(
            (in Slots read) =>
                new Line
                {
                    Id = id[read],
                    Name = name[read],
                    Kind = kind[read],
                    Phantom = phantom[read],
                    Width = width[read],
                    From = from[read],
                    To = to[read],
                    Priority = priority[read],
                    Preferred = preferred[read],
                    Hold = hold[read],
                    Group = group[read],
                    Equipment = equipment[read],
                    Stand = stand[read],
                    Position = position[read],
                    SuppliedBy = suppliedBy[read],
                    Notes = notes[read],
                    Extensions = extensions[read],
                }
        );
    }
}
