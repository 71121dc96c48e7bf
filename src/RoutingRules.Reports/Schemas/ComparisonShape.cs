using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of a comparison of two shows as JSON; written by the engine, read by other tools.</summary>
internal static class ComparisonShape
{
    private static readonly AnyText Text = new();
    private static readonly ListValue Findings = new(new ObjectValue(ReportShape.Finding));

    /// <summary>The whole comparison.</summary>
    public static ObjectShape Comparison { get; } =
        Open(
            "comparison",
            "What differs between two shows.",
            [Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."), .. Members()]
        );

    /// <summary>What a comparison says, wherever it stands.</summary>
    public static MemberShape[] Members() =>
        [
            Must("same", new BoolKind(), "True when both documents say the same, whatever their layout."),
            Must(
                "sinks",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "sinkChange",
                            "Outputs or channels whose source changes.",
                            Must("at", Text, "The outputs or channels."),
                            Must("kind", Words("sinkKind", "output", "sink"), "Outputs, or sinks inside a device."),
                            Must("effect", Words("sinkEffect", "changes", "starts", "stops", "appears", "disappears"), "What became of the signal."),
                            May("before", Text, "The real sources before; absent for silence."),
                            May("after", Text, "The real sources after; absent for silence."),
                            May("servedBefore", Text, "The feed or line it served."),
                            May("servesAfter", Text, "The feed or line it serves now."),
                            May("lineBefore", Text, "What was plugged in at the input it came from."),
                            May("lineAfter", Text, "What is plugged in at the input it comes from."),
                            Must("inEar", new BoolKind(), "True when an in-ear feed is served there before or after.")
                        )
                    )
                ),
                "Outputs and channels whose source changes."
            ),
            Must(
                "demands",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "demandChange",
                            "A feed's destination or a line that is new, gone, renamed or elsewhere.",
                            Must("demand", Text, "Its id."),
                            Must("name", Text, "What people call it."),
                            Must("kind", Words("demandKind", "feed", "line"), "Feed or line."),
                            Must("fate", Words("demandFate", "added", "removed", "moved", "placed", "lost", "renamed"), "What became of it."),
                            May("was", Text, "The id of its feed or line before, when it was renamed."),
                            May("before", Text, "Where it was served before."),
                            May("after", Text, "Where it is served after.")
                        )
                    )
                ),
                "Feeds and lines that are new, gone, renamed or elsewhere."
            ),
            Must(
                "entities",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "entityChange",
                            "A change of one entity of the document.",
                            Must("list", Text, "The JSON Pointer of its list; empty for the document itself."),
                            Must("kind", Text, "What it is."),
                            Must("id", Text, "Its id, or its points."),
                            May("was", Text, "Its id before, when it was renamed."),
                            Must("change", Words("entityFate", "added", "removed", "renamed", "changed", "reordered"), "What became of it."),
                            Must(
                                "members",
                                new ListValue(
                                    new ObjectValue(
                                        Open(
                                            "memberChange",
                                            "A member that says something else.",
                                            Must("name", Text, "The member."),
                                            May("before", Text, "Its value before, as JSON."),
                                            May("after", Text, "Its value after, as JSON.")
                                        )
                                    )
                                ),
                                "The members that differ."
                            )
                        )
                    )
                ),
                "Changes of the documents."
            ),
            Must("hazards", Findings, "Dangers of the change itself."),
            Must("newFindings", Findings, "Findings that only the second show has."),
            Must("resolvedFindings", Findings, "Findings that only the first show has."),
            Must("unchangedFindings", Findings, "Findings that both have."),
        ];
}
