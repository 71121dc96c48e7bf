using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of the JSON account of a list that was read into a show; written by the engine, read by other tools.</summary>
internal static class ImportShape
{
    private static readonly AnyText Text = new();
    private static readonly ListValue Texts = new(Text);

    private static readonly ListValue Remarks = new(
        new ObjectValue(
            Open(
                "remark",
                "Something about the list.",
                May("line", new IntKind(1, int.MaxValue), "The line of its text, from 1; absent when it is about the whole."),
                May("column", Text, "The header of the column; absent when it is about more than one cell."),
                Must("message", Text, "What it is."),
                Must("remedy", Text, "What to do; may be empty where the message says it.")
            )
        )
    );

    public static ObjectShape Import { get; } =
        Open(
            "import",
            "What came of reading a list of feeds or lines into a show.",
            Must("schemaVersion", new VersionKind(1), "The version of this format."),
            Must("path", Text, "The show."),
            Must("from", Text, "The list."),
            Must("list", Words("intentList", "feeds", "lines"), "What it is a list of."),
            Must("merged", new BoolKind(), "False when there are problems; then nothing was merged."),
            Must("problems", Remarks, "What is wrong with the list, by line."),
            Must("notes", Remarks, "What to mind, by line."),
            Must("added", Texts, "Ids of new feeds or lines, in the order of the list."),
            Must(
                "changed",
                new ListValue(
                    new ObjectValue(
                        Open("listChange", "A feed or line that changed.", Must("id", Text, "Its id."), Must("members", Texts, "The members that changed."))
                    )
                ),
                "What changed, in the order of the list."
            ),
            Must("same", Texts, "Ids of rows that say what the show says."),
            Must("kept", Texts, "Ids that the list does not have and that stay, in the order of the show."),
            Must("removed", Texts, "Ids that the list does not have and that were taken out, in the order of the show.")
        );
}
