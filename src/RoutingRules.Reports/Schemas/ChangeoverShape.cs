using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of changeovers as JSON; written by the engine, read by other tools.</summary>
internal static class ChangeoverShape
{
    private static readonly AnyText Text = new();
    private static readonly IntKind Count = new(0, int.MaxValue);
    private static readonly ListValue Texts = new(Text);
    private static readonly ListValue Findings = new(new ObjectValue(ReportShape.Finding));

    // Before the whole document: static members are made in the order of the text.
    private static ObjectShape Task { get; } =
        Open(
            "changeoverTask",
            "What one person does at one place in one go.",
            Must("number", Count, "Its number on the cards, from 1."),
            Must("timing", Words("changeoverTiming", "ahead", "clear-stage", "before-line-check", "line-check"), "When it can be done."),
            May("place", Text, "The device at which it is done; absent for clocks and networks."),
            Must("load", new BoolKind(), "True for what is loaded into a device, by a recall, from a file or by hand."),
            Must("text", Text, "What to do."),
            Must("steps", new ListValue(Count), "The numbers of its steps; every step is in one task."),
            Must("seconds", Count, "About how long it takes one person; a load takes its time once.")
        );

    /// <summary>The whole document.</summary>
    public static ObjectShape Changeover { get; } =
        Open(
            "changeovers",
            "The changeovers of a running order, or the one between two shows.",
            Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
            Must("title", Text, "What the event is called, or the second show."),
            Must(
                "acts",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "actPlan",
                            "One act.",
                            Must("id", Text, "Its id."),
                            Must("name", Text, "What people call it."),
                            May("start", Text, "When it begins, hours:minutes."),
                            Must("assigned", new BoolKind(), "True when its patch was worked out; false when the document gives it."),
                            Must("findings", Findings, "Findings that not every act has."),
                            Must("unplaced", Texts, "Feeds and lines without a place.")
                        )
                    )
                ),
                "The acts; empty when two shows were compared."
            ),
            Must("commonFindings", Findings, "Findings that every act has: mend them once."),
            Must("runFindings", Findings, "Findings about the running order itself."),
            Must(
                "kit",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "kitTotal",
                            "How many of one thing are needed at once.",
                            Must("kind", Words("kitKind", "equipment", "stand", "pack"), "What it is."),
                            Must("name", Text, "What people call it."),
                            May("suppliedBy", Text, "Who brings it."),
                            Must("most", Count, "The most that one act needs."),
                            Must("acts", Texts, "The acts that need it.")
                        )
                    )
                ),
                "How many of each thing are needed at once."
            ),
            Must(
                "changeovers",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "changeover",
                            "One changeover.",
                            Must("from", Text, "The act before."),
                            Must("to", Text, "The act that comes."),
                            May("minutes", Count, "The minutes there are."),
                            Must("seconds", Count, "About how long it takes after the act before, with one person at each place."),
                            Must("rollbackAfter", Count, "The last step after which the act before can be restored at once; 0 for none."),
                            Must("remarks", Texts, "What could not be taken apart into steps."),
                            Must("hazards", Findings, "Dangers of the change itself."),
                            Must(
                                "steps",
                                new ListValue(
                                    new ObjectValue(
                                        Open(
                                            "changeoverStep",
                                            "One step.",
                                            Must("number", Count, "Its number, from 1."),
                                            Must(
                                                "phase",
                                                Words(
                                                    "changeoverPhase",
                                                    "prepare",
                                                    "mute",
                                                    "phantom-off",
                                                    "stage",
                                                    "phantom-on",
                                                    "read-back",
                                                    "patch",
                                                    "labels",
                                                    "verify",
                                                    "clock",
                                                    "open"
                                                ),
                                                "The part of the changeover."
                                            ),
                                            Must(
                                                "timing",
                                                Words("changeoverTiming", "ahead", "clear-stage", "before-line-check", "line-check"),
                                                "When it can be done."
                                            ),
                                            May("place", Text, "The device at which it is done; absent for clocks and networks."),
                                            Must("text", Text, "What to do."),
                                            May("details", Texts, "What belongs to it, such as each label to write."),
                                            Must("points", Texts, "The points it is about."),
                                            Must("hazards", Texts, "What to mind."),
                                            Must("seconds", Count, "About how long it takes one person.")
                                        )
                                    )
                                ),
                                "The steps, in order."
                            ),
                            May("tasks", new ListValue(new ObjectValue(Task)), "The same steps folded: what one person does in one go is one task.")
                        )
                    )
                ),
                "The changeovers, in order."
            )
        );
}
