using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of the JSON answer to what each loss does to a show; written by the engine, read by other tools.</summary>
internal static class ImpactShape
{
    private static readonly AnyText Text = new();
    private static readonly IntKind Count = new(0, int.MaxValue);
    private static readonly ListValue Texts = new(Text);
    private static readonly ListValue Things = new(
        new ObjectValue(
            Open(
                "lostThing",
                "A thing that fails.",
                Must("kind", Words("lossKind", "device", "link", "cable", "way", "power", "point"), "What it is."),
                Must("id", Text, "Its id, address or name."),
                May("label", Text, "What is written on a device.")
            )
        )
    );

    /// <summary>The whole answer.</summary>
    public static ObjectShape Impact { get; } =
        Open(
            "impact",
            "What each loss does to a show as it stands, and what can be done about it.",
            Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
            Must("moves", Count, "How many feeds and lines a plan could plug elsewhere."),
            Must("losses", new ListValue(new ObjectValue(CreateLoss())), "Single losses, the worst first."),
            Must(
                "pairs",
                new ListValue(new ObjectValue(CreateLoss())),
                "Pairs that silence together what neither does alone, the worst first, with what can be done as for single losses; empty unless asked for."
            ),
            Must("pairsOmitted", Count, "How many more pairs there are."),
            Must("failureSets", new ListValue(new ObjectValue(CreateSets())), "For each protected feed the sets of failures that silence it."),
            Must("notArriving", Texts, "Demands that do not arrive as the show stands, so that no loss can be seen for them.")
        );

    private static ObjectShape CreateLoss() =>
        Open(
            "loss",
            "What a loss does.",
            Must("lost", Things, "What fails at once."),
            Must("singlePoint", new BoolKind(), "True when one thing alone silences a protected feed that has no backup left."),
            Must("silences", Texts, "Groups of feeds that fall silent altogether."),
            Must("subjects", new ListValue(new ObjectValue(CreateSubject())), "Feeds and lines that are harmed, the most important first."),
            Must("outputs", Texts, "Outputs that carried a source and no longer do."),
            Must("channels", Texts, "Channels and other internal sinks that carried a source and no longer do."),
            Must("rerouted", Texts, "Streams that go on over other links."),
            Must("feedsKept", Count, "How many feeds go on arriving everywhere."),
            Must("linesKept", Count, "How many lines go on arriving everywhere."),
            Must("remarks", Texts, "Remarks for people."),
            May("plan", new ObjectValue(CreatePlan()), "What can be done; absent when no plan was asked for or nothing is harmed.")
        );

    private static ObjectShape CreateSubject() =>
        Open(
            "lostSubject",
            "A feed or line that is harmed.",
            Must("kind", Words("subjectKind", "feed", "line"), "Which of the two."),
            Must("id", Text, "Its id."),
            Must("name", Text, "What people call it."),
            May("role", Text, "What a feed is for."),
            Must("priority", Words("subjectPriority", "critical", "high", "normal", "low"), "How much it matters."),
            May("inEar", new BoolKind(), "True for a feed that ends in somebody's ears, whatever its role says; left out for all others."),
            Must("protected", new BoolKind(), "True for a feed that is critical, of high priority, a main or an in-ear feed."),
            May("person", Text, "Who listens to it."),
            Must("fate", Words("lossFate", "lost", "backed-up", "partly"), "What becomes of it."),
            Must("lostAt", Texts, "Where it no longer arrives."),
            Must("remainsAt", Texts, "Where it still arrives."),
            Must("backups", Texts, "Feeds that back it up and still arrive.")
        );

    private static ObjectShape CreatePlan() =>
        Open(
            "plan",
            "What to plug and load after the loss, carried out on a copy of the show and traced there.",
            Must("moves", Count, "How many feeds and lines are plugged elsewhere."),
            Must("steps", new ListValue(new ObjectValue(CreateStep())), "The steps, in order."),
            Must(
                "recovered",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "recoveredDemand",
                            "What sounds again.",
                            Must("demand", Text, "The demand."),
                            Must("from", Text, "Where it was plugged."),
                            Must("to", Text, "Where it is plugged now.")
                        )
                    )
                ),
                "What sounds again, the most important first."
            ),
            Must(
                "unrecovered",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "unrecoveredDemand",
                            "What stays silent.",
                            Must("demand", Text, "The demand."),
                            May("sink", Text, "The sink of a line that stays silent."),
                            Must("reason", Text, "Why.")
                        )
                    )
                ),
                "What stays silent, the most important first."
            ),
            Must(
                "displaced",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "displacedDemand",
                            "What went on and gives up its place.",
                            Must("demand", Text, "The demand that falls silent."),
                            Must("at", Text, "Its place."),
                            Must("by", Text, "The demand of higher priority that takes it.")
                        )
                    )
                ),
                "What went on and gives up its place for something of higher priority."
            ),
            Must("newErrors", Texts, "Errors that the rules find after the steps and not before.")
        );

    private static ObjectShape CreateStep() =>
        Open(
            "step",
            "One step.",
            Must("kind", Words("stepKind", "pull", "replug", "stream", "route"), "What is done."),
            Must("device", Text, "Where it is done."),
            May("demand", Text, "The demand that is pulled, or plugged elsewhere."),
            May("from", Text, "Where it was plugged."),
            May("to", Text, "Where it is plugged now."),
            May("cableTo", Texts, "The inputs at the other end of the cable that moves."),
            May("ownCable", new BoolKind(), "True when the new place has a cable of its own, so that nothing has to be plugged."),
            May("elsewhere", new BoolKind(), "True when the new place is not one the document allows."),
            May(
                "stream",
                new ObjectValue(
                    Open(
                        "stepStream",
                        "What a stream becomes.",
                        Must("id", Text, "The stream."),
                        May("from", Text, "Its transmit slots; absent when it is taken away."),
                        May(
                            "to",
                            new ListValue(
                                new ObjectValue(
                                    Open(
                                        "stepReceiver",
                                        "A receiver.",
                                        Must("at", Text, "Its receive slots."),
                                        May("channels", Text, "The stream channels it takes; absent for all.")
                                    )
                                )
                            ),
                            "Its receivers."
                        )
                    )
                ),
                "The stream that is set or taken away."
            ),
            May(
                "route",
                new ObjectValue(
                    Open(
                        "stepRoute",
                        "A route inside a device.",
                        May("from", Text, "The sources; absent when the sinks are cleared."),
                        Must("to", Text, "The sinks.")
                    )
                ),
                "The route that is set."
            )
        );

    private static ObjectShape CreateSets() =>
        Open(
            "failureSets",
            "The smallest sets of failures that silence a protected feed and all that back it up.",
            Must("feed", Text, "The feed."),
            Must("name", Text, "What people call it."),
            Must("role", Text, "What it is for."),
            May("smallest", Count, "The size of the smallest set; absent when there is none up to the limit."),
            Must("limit", Count, "The largest size that was looked at."),
            Must("sets", new ListValue(Things), "The sets, small ones first."),
            Must("omitted", Count, "How many more there are up to the limit.")
        );
}
