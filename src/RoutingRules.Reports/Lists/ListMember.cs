using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Reports.Lists;

/// <summary>A member of a feed or a line that lists have a column for.</summary>
/// <param name="Name">Its name in documents.</param>
/// <param name="Kind">How a cell says it.</param>
/// <param name="Absent">What a cell says when the document leaves it away.</param>
internal sealed record ListMember(string Name, CellKind Kind, string Absent)
{
    private static readonly ListMember[] Feeds = Of(IntentTables.Feed.Shape, Feed);
    private static readonly ListMember[] Lines = Of(IntentTables.Line.Shape, Line);

    /// <summary>The members of a list in the order of its columns.</summary>
    public static ListMember[] Of(IntentList list) => list == IntentList.Feeds ? Feeds : Lines;

    private static ListMember[] Of(ObjectShape shape, Func<string, (CellKind Kind, string Absent)> how) =>
        [.. ListTables.Columns(shape).Select(name => new ListMember(name, how(name).Kind, how(name).Absent))];

    private static (CellKind Kind, string Absent) Feed(string name) =>
        name switch
        {
            "role" => (CellKind.Word, "utility"),
            "to" => (CellKind.Destinations, ""),
            "spread" => (CellKind.Flag, "no"),
            "limiter" => (CellKind.Flag, ""),
            "separateFrom" => (CellKind.Separations, ""),
            "delayMilliseconds" => (CellKind.Decimal, ""),
            "backupOf" or "source" => (CellKind.Name, ""),
            _ => Both(name),
        };

    private static (CellKind Kind, string Absent) Line(string name) =>
        name switch
        {
            "kind" => (CellKind.Word, ""),
            "phantom" => (CellKind.Word, "either"),
            "width" => (CellKind.Number, "1"),
            "from" => (CellKind.Origin, ""),
            "to" => (CellKind.Ranges, ""),
            _ => Both(name),
        };

    private static (CellKind Kind, string Absent) Both(string name) =>
        name switch
        {
            "id" => (CellKind.Name, ""),
            "priority" => (CellKind.Word, "normal"),
            "preferred" => (CellKind.Number, ""),
            "hold" => (CellKind.Flag, ""),
            _ => (CellKind.Text, ""),
        };
}
