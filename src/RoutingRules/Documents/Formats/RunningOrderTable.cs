using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>The tables of a running order.</summary>
internal static class RunningOrderTable
{
    private const int MaxSeconds = 3600;
    private const int MaxMinutes = 1440;

    public static ObjectTable<RunningOrder> Run { get; } = CreateRun();

    private static ObjectTable<RunningOrder> CreateRun()
    {
        var act = CreateAct();
        var pace = CreatePace();
        var table = new TableBuilder<RunningOrder>("run", "running order", "The acts of one stage in the order in which they play, on one rig.");
        var version = table.Required("schemaVersion", new VersionKind(ShowTable.Version), static order => order.SchemaVersion, "The version of this format.");
        var title = table.Required("title", Kinds.FilledText, static order => order.Title, "What the event is called.");
        var venue = table.Optional("venue", Kinds.Text, static order => order.Venue, "Where it takes place.");
        var date = table.OptionalValue("date", Kinds.Date, static order => order.Date, "The first day, year-month-day.");
        var revision = table.Optional("revision", Kinds.Text, static order => order.Revision, "The revision of the document, printed on every sheet.");
        var rig = table.Required("rig", RigTables.Rig, static order => order.Rig, "The equipment all acts share and how it is cabled.");
        var feeds = table.List("feeds", IntentTables.Feed, static order => order.Feeds, "Feeds that every act has unless it says otherwise.");
        var lines = table.List("lines", IntentTables.Line, static order => order.Lines, "Lines that every act has unless it says otherwise.");
        var patch = table.Default("patch", PatchTables.Patch, new Patch(), static order => order.Patch, "The patch before the first act.");
        var locked = table.List("locked", Kinds.Id<Feed>(), static order => order.Locked, "House feeds that no act may change, leave out or move.");
        var paces = table.Default("pace", pace, new Pace(), static order => order.Pace, "How long things take; absent means the usual times.");
        var acts = table.RequiredList("acts", act, static order => order.Acts, "The acts, in the order in which they play.", min: 1);
        var extensions = table.Extensions(static order => order.Extensions);
        return table.Build(
            (in Slots read) =>
                new RunningOrder
                {
                    SchemaVersion = version[read],
                    Title = title[read],
                    Venue = venue[read],
                    Date = date[read],
                    Revision = revision[read],
                    Rig = rig[read],
                    Feeds = feeds[read],
                    Lines = lines[read],
                    Patch = patch[read],
                    Locked = locked[read],
                    Pace = paces[read],
                    Acts = acts[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Act> CreateAct()
    {
        var table = new TableBuilder<Act>("act", "act", "One act: what it adds to, changes in and leaves out of what the house has.");
        var id = table.Required("id", Kinds.Id<Act>(), static act => act.Id, "The id that findings name.");
        var name = table.Optional("name", Kinds.Text, static act => act.Name, "What people call it.");
        var date = table.OptionalValue("date", Kinds.Date, static act => act.Date, "The day it plays; absent means the day of the running order.");
        var start = table.OptionalValue("start", new TimeKind(), static act => act.Start, "When it begins to play, hours:minutes.");
        var minutes = table.OptionalValue(
            "changeoverMinutes",
            new IntKind(0, MaxMinutes),
            static act => act.ChangeoverMinutes,
            "Minutes between the end of the act before and the start."
        );
        var without = table.List("without", Kinds.SharedText, static act => act.Without, "Ids of house feeds and house lines that this act does without.");
        var feeds = table.List("feeds", IntentTables.Feed, static act => act.Feeds, "Feeds of the act; one with the id of a house feed takes its place.");
        var lines = table.List("lines", IntentTables.Line, static act => act.Lines, "Lines of the act; one with the id of a house line takes its place.");
        var patch = table.Optional(
            "patch",
            PatchTables.Patch,
            static act => act.Patch,
            "The whole patch of the act as somebody made it; absent means that it is worked out."
        );
        var notes = table.Optional("notes", Kinds.Text, static act => act.Notes, "Notes for people.");
        var extensions = table.Extensions(static act => act.Extensions);
        return table.Build(
            (in Slots read) =>
                new Act
                {
                    Id = id[read],
                    Name = name[read],
                    Date = date[read],
                    Start = start[read],
                    ChangeoverMinutes = minutes[read],
                    Without = without[read],
                    Feeds = feeds[read],
                    Lines = lines[read],
                    Patch = patch[read],
                    Notes = notes[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Pace> CreatePace()
    {
        var usual = new Pace();
        var table = new TableBuilder<Pace>("pace", "pace", "How long the hand movements of a changeover take, in seconds.");
        var seconds = new IntKind(0, MaxSeconds);
        var plug = table.Default(
            "secondsToPlug",
            seconds,
            usual.SecondsToPlug,
            static pace => pace.SecondsToPlug,
            "To pull, plug or move one lead; usually 30."
        );
        var load = table.Default(
            "secondsToLoad",
            seconds,
            usual.SecondsToLoad,
            static pace => pace.SecondsToLoad,
            "To load one route, stream, phantom or gain setting; usually 5."
        );
        var mute = table.Default(
            "secondsToMute",
            seconds,
            usual.SecondsToMute,
            static pace => pace.SecondsToMute,
            "To mute or turn down one output or channel; usually 3."
        );
        var listen = table.Default(
            "secondsToListen",
            seconds,
            usual.SecondsToListen,
            static pace => pace.SecondsToListen,
            "To listen to one output or channel; usually 15."
        );
        var device = table.Default(
            "secondsForDevice",
            seconds,
            usual.SecondsForDevice,
            static pace => pace.SecondsForDevice,
            "To bring in, exchange or take out one device; usually 300."
        );
        var clock = table.Default(
            "secondsForClock",
            seconds,
            usual.SecondsForClock,
            static pace => pace.SecondsForClock,
            "To change one clock and see every device lock; usually 60."
        );
        return table.Build(
            (in Slots read) =>
                new Pace
                {
                    SecondsToPlug = plug[read],
                    SecondsToLoad = load[read],
                    SecondsToMute = mute[read],
                    SecondsToListen = listen[read],
                    SecondsForDevice = device[read],
                    SecondsForClock = clock[read],
                }
        );
    }
}
