using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of the JSON account of mending a show; written by the engine, read by other tools.</summary>
internal static class FixShape
{
    private static readonly AnyText Text = new();

    /// <summary>The whole account.</summary>
    public static ObjectShape Fix { get; } =
        Open(
            "fixes",
            "What mending a show came to.",
            Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
            Must("path", Text, "The show."),
            Must(
                "applied",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "appliedFix",
                            "A fix that was taken, with the finding it mended.",
                            [
                                .. Mended(),
                                Must("title", Text, "What it did, as an order."),
                                Must("safety", Words("appliedSafety", "safe", "unsafe"), "Safe when every output and channel carries what it carried."),
                                May("caution", Text, "What to mind at the rig."),
                                Must("edits", new ListValue(Text), "What changed in the document, one sentence each."),
                                Must(
                                    "moves",
                                    new ListValue(
                                        new ObjectValue(
                                            Open(
                                                "sinkMove",
                                                "An output or channel that carries something else.",
                                                Must("at", Text, "The output or channel."),
                                                May("before", Text, "Its source before; absent for silence."),
                                                May("after", Text, "Its source now; absent for silence.")
                                            )
                                        )
                                    ),
                                    "Every output and channel that carries something else; empty for a safe fix."
                                ),
                            ]
                        )
                    )
                ),
                "The fixes that were taken, in the order they were."
            ),
            Must(
                "refused",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "refusedFix",
                            "A fix that was tried and not taken, with the finding it was for.",
                            [.. Mended(), Must("title", Text, "What it would have done."), Must("reason", Text, "Why it was not taken.")]
                        )
                    )
                ),
                "The fixes that were tried and not taken."
            ),
            Must("remaining", new ListValue(new ObjectValue(ReportShape.Finding)), "The findings that remain and count, each with what can be done about it."),
            Must("waived", new ListValue(new ObjectValue(ReportShape.Waived)), "Findings that a waiver excuses."),
            Must("known", new ListValue(new ObjectValue(ReportShape.Finding)), "Findings that the baseline knows."),
            Must("circle", new ListValue(Text), "Ids of rules whose fixes undo one another; usually empty."),
            Must("stopped", new BoolKind(), "True when too many fixes had to be tried."),
            Must("patch", ReportShape.Patch, "The change of the document as a JSON Patch (RFC 6902).")
        );

    private static MemberShape[] Mended() =>
        [
            Must("rule", Text, "The rule's id."),
            Must("name", Text, "The rule's name."),
            Must("severity", Words("severity", "note", "warning", "error"), "How serious the finding is."),
            Must("message", Text, "What was wrong and where."),
            Must("fingerprint", Text, "The identity of the finding."),
        ];
}
