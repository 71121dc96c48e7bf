using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>The table of a whole show.</summary>
internal static class ShowTable
{
    /// <summary>The format version that the tables describe.</summary>
    public const int Version = 1;

    public static ObjectTable<Show> Show { get; } = Create();

    private static ObjectTable<Show> Create()
    {
        var table = new TableBuilder<Show>("show", "show", "One show: rig, feeds, lines and patch.");
        var version = table.Required("schemaVersion", new VersionKind(Version), static show => show.SchemaVersion, "The version of this format.");
        var title = table.Required("title", Kinds.FilledText, static show => show.Title, "What the show is called.");
        var venue = table.Optional("venue", Kinds.Text, static show => show.Venue, "Where it takes place.");
        var date = table.OptionalValue("date", Kinds.Date, static show => show.Date, "The day of the show, year-month-day.");
        var revision = table.Optional("revision", Kinds.Text, static show => show.Revision, "The revision of the document, printed on every sheet.");
        var rig = table.Required("rig", RigTables.Rig, static show => show.Rig, "The equipment and how it is cabled.");
        var feeds = table.List("feeds", IntentTables.Feed, static show => show.Feeds, "What mixes shall reach.");
        var lines = table.List("lines", IntentTables.Line, static show => show.Lines, "What stage sources shall reach.");
        var patch = table.Default("patch", PatchTables.Patch, new Patch(), static show => show.Patch, "Routes and streams. Absent means that there are none.");
        var waivers = table.List(
            "waivers",
            WaiverTables.InShow,
            static show => show.Waivers,
            "Decisions to live with findings of this show for a time; of several that fit a finding the first counts."
        );
        var extensions = table.Extensions(static show => show.Extensions);
        return table.Build(
            (in Slots read) =>
                new Show
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
                    Waivers = waivers[read],
                    Extensions = extensions[read],
                }
        );
    }
}
