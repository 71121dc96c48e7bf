using RoutingRules.Reading.Tables;

namespace RoutingRules.Reading.Documents;

/// <summary>The shape of the JSON report; written by the engine, read by other tools.</summary>
internal static class ReportShape
{
    private const int ObjectiveNumbers = 14;

    private static readonly AnyText Text = new();
    private static readonly IntKind Count = new(0, int.MaxValue);
    private static readonly IntKind FromOne = new(1, int.MaxValue);
    private static readonly LongKind Number = new(-(1L << 53) + 1, (1L << 53) - 1);

    public static ObjectShape Report { get; } = CreateReport();

    private static ObjectShape CreateReport() => Shape(
        "report",
        "What came of checking documents.",
        Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
        Must("documents", new ListValue(new ObjectValue(CreateDocument())), "One entry for each document, in the order in which they were given."),
        Must(
            "summary",
            new ObjectValue(Shape(
                "summary",
                "Numbers over all documents.",
                Must("documents", Count, "Documents looked at."),
                Must("errors", Count, "Findings of severity error."),
                Must("warnings", Count, "Findings of severity warning."),
                Must("notes", Count, "Findings of severity note."),
                Must("undecided", Count, "Subjects about which a rule could not decide."))),
            "Numbers over all documents."),
        May("assignment", new ObjectValue(CreateAssignment()), "What an assignment came to."));

    private static ObjectShape CreateDocument() => Shape(
        "document",
        "One document and what was found in it.",
        Must("path", Text, "Where it was read from."),
        Must(
            "status",
            Words("documentStatus", "clean", "findings", "unreadable", "undecided"),
            "Clean, with findings, not readable, or without findings but with rules that could not decide."),
        Must("findings", new ListValue(new ObjectValue(CreateFinding())), "The findings, in the one fixed order."),
        Must(
            "rules",
            new ObjectValue(Shape(
                "ruleOutcomes",
                "How the rules ended that found nothing.",
                Must("passed", Count, "Rules that looked and found nothing."),
                Must("notApplicable", Count, "Rules that had nothing to look at."),
                Must("undecided", Count, "Rules that could not decide about at least one subject."),
                May(
                    "undecidedRules",
                    new ListValue(new ObjectValue(Shape(
                        "undecidedRule",
                        "A subject about which a rule could not decide.",
                        Must("rule", Text, "The rule's id."),
                        Must("subject", Text, "The id or address of the subject; empty for the whole document."),
                        Must("reason", Text, "Why.")))),
                    "Which rules could not decide, and why."))),
            "How the rules ended that found nothing."));

    private static ObjectShape CreateFinding() => Shape(
        "finding",
        "One thing a rule, or the reader, has to say about a document.",
        Must("rule", Text, "The rule's id."),
        Must("name", Text, "The rule's name."),
        Must("severity", Words("severity", "note", "warning", "error"), "How serious it is."),
        Must("message", Text, "What is wrong and where."),
        May("remedy", Text, "What to do about it."),
        Must(
            "entities",
            new ListValue(new ObjectValue(Shape(
                "entity",
                "A thing the finding is about.",
                Must("role", Text, "The part it plays in the finding."),
                Must("id", Text, "Its id or address.")))),
            "What the finding is about, in the order its rule defines."),
        Must("pointer", Text, "The place as a JSON Pointer (RFC 6901); empty for the whole document."),
        May("line", FromOne, "The line of the place."),
        May("column", FromOne, "The column of the place, in UTF-16 units."),
        Must("fingerprint", Text, "The identity of the finding: 16 hexadecimal digits that reordering and reformatting do not change."),
        Must("fixes", new ListValue(new ObjectValue(Open("fix", "An offered edit."))), "Edits that the engine offers."));

    private static ObjectShape CreateAssignment() => Open(
        "assignment",
        "What an assignment came to.",
        Must("status", Text, "Whether a patch was found, and how good it is known to be."),
        May("provenLevel", new IntKind(0, 10), "The last level that is proven to be as good as it can be."),
        May("objective", new ListValue(Number, ObjectiveNumbers, ObjectiveNumbers), "The objective, most important number first."),
        May("bounds", new ListValue(Number, 0, ObjectiveNumbers), "Proven lower bounds of the first numbers of the objective."),
        May(
            "placements",
            new ListValue(new ObjectValue(Open(
                "placement",
                "Where a demand was placed.",
                Must("demand", Text, "The demand: the feed's id, a slash and the number of its entry, or the line's id."),
                Must("at", Kinds.PointRange, "The points.")))),
            "Where each demand was placed."),
        May(
            "unplaced",
            new ListValue(new ObjectValue(Open(
                "unplacedDemand",
                "A demand that found no place.",
                Must("demand", Text, "The demand."),
                Must("reason", Text, "Why.")))),
            "Demands that found no place."),
        May("moved", new ListValue(Text), "Demands whose points changed."),
        May("removedStreams", new ListValue(Text), "Streams that are no longer there."),
        May("silenced", new ListValue(Text), "Outputs that sounded before and are silent now."));

    private static ClosedWordKind<int> Words(string definition, params string[] words) => new(definition, [.. words.Select((word, i) => (word, i))]);

    private static MemberShape Must(string name, ValueShape value, string doc) => new(name, value, true, doc);

    private static MemberShape May(string name, ValueShape value, string doc) => new(name, value, false, doc);

    private static ObjectShape Shape(string definition, string doc, params MemberShape[] members) => new(definition, definition, doc, members, []);

    private static ObjectShape Open(string definition, string doc, params MemberShape[] members) => new(definition, definition, doc, members, [], open: true);
}
