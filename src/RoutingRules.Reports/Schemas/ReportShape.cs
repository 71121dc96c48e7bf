using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of the JSON report; written by the engine, read by other tools.</summary>
internal static class ReportShape
{
    private const int ObjectiveNumbers = 14;

    private static readonly AnyText Text = new();
    private static readonly IntKind Count = new(0, int.MaxValue);
    private static readonly IntKind FromOne = new(1, int.MaxValue);
    private static readonly LongKind Number = new(-(1L << 53) + 1, (1L << 53) - 1);

    private static readonly ListValue Entities = CreateEntities();

    /// <summary>A JSON Patch.</summary>
    public static ListValue Patch { get; } =
        new(
            new ObjectValue(
                Open(
                    "patchOperation",
                    "An operation of a JSON Patch (RFC 6902).",
                    Must("op", Words("patchVerb", "test", "add", "remove", "replace"), "What it does."),
                    Must("path", Text, "The place as a JSON Pointer (RFC 6901).")
                )
            )
        );

    public static ObjectShape Finding { get; } = CreateFinding();

    public static ObjectShape Waived { get; } = CreateWaived();

    public static ObjectShape Report { get; } = CreateReport();

    private static ObjectShape CreateReport() =>
        Shape(
            "report",
            "What came of checking documents.",
            Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
            Must("documents", new ListValue(new ObjectValue(CreateDocument())), "One entry for each document, in the order in which they were given."),
            Must(
                "summary",
                new ObjectValue(
                    Shape(
                        "summary",
                        "Numbers over all documents.",
                        Must("documents", Count, "Documents looked at."),
                        Must("errors", Count, "Findings of severity error."),
                        Must("warnings", Count, "Findings of severity warning."),
                        Must("notes", Count, "Findings of severity note."),
                        May("waived", Count, "Findings that a waiver excuses."),
                        May("known", Count, "Findings that the baseline knows."),
                        Must("undecided", Count, "Subjects about which a rule could not decide.")
                    )
                ),
                "Numbers over all documents."
            ),
            May("coverage", new ObjectValue(CreateCoverage()), "What was looked at and what not."),
            May("assignment", new ObjectValue(CreateAssignment()), "What an assignment came to.")
        );

    private static ObjectShape CreateDocument() =>
        Shape(
            "document",
            "One document and what was found in it.",
            Must("path", Text, "Where it was read from; of one of several documents in a file, the file, !/ and its name or number there."),
            May("text", Text, "The text in which lines and columns count, when the document is one of several in it."),
            Must(
                "status",
                Words("documentStatus", "clean", "findings", "unreadable", "undecided"),
                "Clean, with findings, not readable, or without findings but with rules that could not decide."
            ),
            May("causes", new ListValue(new ObjectValue(CreateCause())), "What the findings come from; there when something is graver than a note."),
            Must("findings", new ListValue(new ObjectValue(Finding)), "The findings that count, in the one fixed order."),
            May("waived", new ListValue(new ObjectValue(Waived)), "Findings that a waiver excuses."),
            May("known", new ListValue(new ObjectValue(Finding)), "Findings that the baseline knows; there when a baseline was given."),
            May(
                "gone",
                new ListValue(
                    new ObjectValue(
                        Shape(
                            "goneFinding",
                            "What the baseline knows and the check no longer finds.",
                            Must("rule", Text, "The rule's id."),
                            Must("fingerprint", Text, "The identity of the finding."),
                            Must("entities", Entities, "What the finding was about.")
                        )
                    )
                ),
                "What the baseline knows and the check no longer finds; there when a baseline was given."
            ),
            Must(
                "rules",
                new ObjectValue(
                    Shape(
                        "ruleOutcomes",
                        "How the rules ended.",
                        May("found", Count, "Rules that found something, waived and known findings included."),
                        Must("passed", Count, "Rules that looked and found nothing."),
                        Must("notApplicable", Count, "Rules that had nothing to look at."),
                        Must("undecided", Count, "Rules that could not decide about at least one subject."),
                        May(
                            "undecidedRules",
                            new ListValue(
                                new ObjectValue(
                                    Shape(
                                        "undecidedRule",
                                        "A subject about which a rule could not decide.",
                                        Must("rule", Text, "The rule's id."),
                                        Must("subject", Text, "The id or address of the subject; empty for the whole document."),
                                        Must("reason", Text, "Why.")
                                    )
                                )
                            ),
                            "Which rules could not decide, and why."
                        )
                    )
                ),
                "How the rules ended."
            )
        );

    private static MemberShape[] FindingMembers() =>
        [
            Must("rule", Text, "The rule's id."),
            Must("name", Text, "The rule's name."),
            Must("severity", Words("severity", "note", "warning", "error"), "How serious it is."),
            Must("message", Text, "What is wrong and where."),
            May("remedy", Text, "What to do about it."),
            Must("entities", Entities, "What the finding is about, in the order its rule defines."),
            Must("pointer", Text, "The place as a JSON Pointer (RFC 6901); empty for the whole document."),
            May("line", FromOne, "The line of the place."),
            May("column", FromOne, "The column of the place, in UTF-16 units."),
            Must("fingerprint", Text, "The identity of the finding: 16 hexadecimal digits that reordering and reformatting do not change."),
            Must("fixes", new ListValue(new ObjectValue(CreateFix())), "Fixes that the engine offers, the safest first; empty unless they were asked for."),
        ];

    private static ObjectShape CreateCause() =>
        Shape(
            "cause",
            "One slip that explains findings, with the repair that makes them go away: applied to a copy, traced and checked.",
            Must("number", FromOne, "Its number, by which it is mended."),
            Must("title", Text, "What is wrong."),
            Must(
                "confidence",
                Words("confidence", "only", "tie", "partial"),
                "Whether no other repair does as much, others do as well, or not everything that could be the cause was tried."
            ),
            Must("findings", new ListValue(Text), "The fingerprints of the findings that it explains."),
            Must("places", Entities, "What the repair changes."),
            Must("repair", new ObjectValue(CreateFix()), "How to mend it."),
            May("alternatives", new ListValue(new ObjectValue(CreateFix())), "Repairs that would do as well.")
        );

    private static ObjectShape CreateFix() =>
        Open(
            "fix",
            "A way to mend what the finding is about.",
            Must("title", Text, "What it does, as an order."),
            Must("safety", Words("fixSafety", "safe", "unsafe", "manual"), "How far it may be taken without a person; manual fixes have choices and no patch."),
            May("caution", Text, "What to mind at the rig."),
            May("choices", new ListValue(Text), "What a person can choose from."),
            May("patch", Patch, "The change of the document as a JSON Patch.")
        );

    private static ListValue CreateEntities() =>
        new(
            new ObjectValue(
                Shape(
                    "entity",
                    "A thing the finding is about.",
                    Must("role", Text, "The part it plays in the finding."),
                    Must("id", Text, "Its id or address.")
                )
            )
        );

    private static ObjectShape CreateFinding() => Shape("finding", "One thing a rule, or the reader, has to say about a document.", FindingMembers());

    private static ObjectShape CreateWaived() =>
        Shape(
            "waivedFinding",
            "A finding that a waiver excuses.",
            [
                .. FindingMembers(),
                Must(
                    "waiver",
                    new ObjectValue(
                        Shape(
                            "appliedWaiver",
                            "The waiver that excuses it.",
                            Must("reason", Text, "Why this is acceptable."),
                            Must("owner", Text, "Who answers for it."),
                            Must("expires", Kinds.Date, "The last day on which it counts.")
                        )
                    ),
                    "The waiver that excuses it."
                ),
            ]
        );

    private static ObjectShape CreateCoverage() =>
        Shape(
            "coverage",
            "What was looked at and what not.",
            Must(
                "rules",
                new ListValue(
                    new ObjectValue(
                        Shape(
                            "ruleCoverage",
                            "On how many documents a rule ended in which way.",
                            Must("rule", Text, "The rule's id."),
                            Must("name", Text, "The rule's name."),
                            Must("found", Count, "Documents in which it found something, waived and known findings included."),
                            Must("passed", Count, "Documents in which it looked and found nothing."),
                            Must("notApplicable", Count, "Documents in which it had nothing to look at."),
                            Must("undecided", Count, "Documents about which it could not decide in full.")
                        )
                    )
                ),
                "The rules that ran, by id."
            ),
            Must("switchedOff", new ListValue(Text), "Ids of rules that a configuration kept from running.")
        );

    private static ObjectShape CreateAssignment() =>
        Open(
            "assignment",
            "What an assignment came to.",
            Must("status", Text, "How far the assignment got: optimal, feasible, stopped or pins-contradict."),
            May("provenLevel", new IntKind(0, 10), "The last level that is proven to be as good as it can be."),
            May("objective", new ListValue(Number, ObjectiveNumbers, ObjectiveNumbers), "The objective, most important number first."),
            May("bounds", new ListValue(Number, 0, ObjectiveNumbers), "Proven lower bounds of the first numbers of the objective."),
            May(
                "placements",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "placement",
                            "Where a demand was placed.",
                            Must("demand", Text, "The demand: the feed's id, a slash and the number of its entry, or the line's id."),
                            Must("at", Kinds.PointRange, "The points.")
                        )
                    )
                ),
                "Where each demand was placed."
            ),
            May("unplaced", new ListValue(new ObjectValue(WhyShape.Unplaced)), "Demands that found no place."),
            May("utilisation", WhyShape.Utilisation, "How full each device is."),
            May("links", WhyShape.Links, "How full each direction of a link is that a stream passes."),
            May(
                "provenNumbers",
                new IntKind(0, ObjectiveNumbers),
                "How many numbers of the objective, from the first, are proven to be the smallest possible."
            ),
            May("moved", new ListValue(Text), "Demands whose points changed."),
            May("contradictions", new ListValue(new ListValue(Text)), "Sets of fixed places that cannot hold together."),
            May("removedStreams", new ListValue(Text), "Streams that are no longer there."),
            May(
                "removedReceivers",
                new ListValue(
                    new ObjectValue(
                        Shape(
                            "removedReceiver",
                            "Receive slots that took a stream and take none now.",
                            Must("stream", Text, "The stream."),
                            Must("at", Kinds.PointRange, "The slots.")
                        )
                    )
                ),
                "Receive slots that took a stream and take none now."
            ),
            May("silenced", new ListValue(Text), "Outputs that sounded before and are silent now."),
            May("cleared", new ListValue(Text), "Channels cleared because no line with a place names them."),
            May("notes", new ListValue(Text), "Remarks for people.")
        );

    private static ObjectShape Shape(string definition, string doc, params MemberShape[] members) => new(definition, definition, doc, members, []);
}
