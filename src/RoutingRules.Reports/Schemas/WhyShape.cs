using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using static RoutingRules.Reports.Schemas.ShapeParts;

namespace RoutingRules.Reports.Schemas;

/// <summary>The shape of the JSON answer to why a feed or a line is where it is; written by the engine, read by other tools.</summary>
internal static class WhyShape
{
    private const int ObjectiveNumbers = 14;

    private static readonly AnyText Text = new();
    private static readonly IntKind Count = new(0, int.MaxValue);
    private static readonly LongKind Bits = new(0, (1L << 53) - 1);
    private static readonly ListValue Texts = new(Text);
    private static readonly ListValue Objective = new(Count, ObjectiveNumbers, ObjectiveNumbers);

    /// <summary>A demand without a place, in answers and in reports of assignments.</summary>
    public static ObjectShape Unplaced { get; } =
        Open(
            "unplacedDemand",
            "A demand that found no place.",
            Must("demand", Text, "The demand."),
            May("sink", Text, "The sink of a line that is not reached; absent when the whole demand has no place."),
            Must("reason", Text, "Why."),
            May("conflict", Texts, "Demands that cannot all have a place together with it, and could without any one of them."),
            May("conflictProof", Words("conflictProof", "not-checked", "searched", "counted"), "How the conflict is known."),
            May("conflictPoints", Texts, "When it is known by counting: the points that all of them may use."),
            May(
                "relaxations",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "relaxation",
                            "A single change that would place it.",
                            Must(
                                "kind",
                                Words("relaxationKind", "free-reserved", "fewer-spares", "release-hold", "drop-pin", "allow-zone"),
                                "What is changed."
                            ),
                            Must("subject", Text, "What the change is about."),
                            Must("at", Text, "Where it would be."),
                            Must("moves", Count, "How many others would be elsewhere than now.")
                        )
                    )
                ),
                "Single changes that would place it, each tried."
            )
        );

    /// <summary>How full the devices are.</summary>
    public static ListValue Utilisation { get; } =
        new(
            new ObjectValue(
                Open(
                    "deviceUse",
                    "How full a device is.",
                    Must("device", Text, "The device."),
                    Must("outputsUsed", Count, "Outputs at which a feed is placed."),
                    Must("outputsUsable", Count, "Outputs that are neither dead, reserved nor excluded."),
                    Must("inputsUsed", Count, "Inputs at which a line is placed."),
                    Must("inputsUsable", Count, "Inputs that are neither dead, reserved nor excluded."),
                    Must("transmitBlocksUsed", Count, "Transmit blocks that a stream sends."),
                    Must("transmitBlockLimit", Count, "Transmit blocks that can be sent."),
                    Must("receiveBlocksUsed", Count, "Receive blocks that a stream feeds."),
                    Must("receiveBlockLimit", Count, "Receive blocks there are."),
                    Must("streamsReceived", Count, "Streams received."),
                    May("streamsReceivedLimit", Count, "Streams that can be received; absent when the profile states no limit.")
                )
            )
        );

    /// <summary>How full the links are.</summary>
    public static ListValue Links { get; } =
        new(
            new ObjectValue(
                Open(
                    "linkUse",
                    "How full a link is in one direction.",
                    Must("link", Text, "The link."),
                    Must("from", Text, "The device at which the direction starts."),
                    Must("to", Text, "The device at which it ends."),
                    Must("streams", Count, "Streams that pass, each once however many receivers it has."),
                    Must("bitsPerSecond", Bits, "What they take together."),
                    May("mostBitsPerSecond", Bits, "What they may take; absent when the link has no speed.")
                )
            )
        );

    /// <summary>The whole answer.</summary>
    public static ObjectShape Why { get; } =
        Open(
            "why",
            "Why the demands of a feed or a line are where they are.",
            Must("schemaVersion", new VersionKind(ShowTable.Version), "The version of this format."),
            Must("subject", Text, "The feed or line that was asked about."),
            Must("status", Words("whyStatus", "optimal", "feasible", "stopped", "pins-contradict"), "How far the assignment got."),
            May("objective", Objective, "How good the assignment is, most important number first in the usual order."),
            Must("decisions", new ListValue(new ObjectValue(CreateDecision())), "One for each demand."),
            May("whatIf", new ObjectValue(CreateWhatIf()), "What follows from the place that was asked about."),
            Must("utilisation", Utilisation, "How full each device is."),
            Must("links", Links, "How full each direction of a link is that a stream passes.")
        );

    private static ObjectShape CreateDecision() =>
        Open(
            "decision",
            "One demand, its place, and what speaks against every other.",
            Must("demand", Text, "The demand."),
            May("at", Text, "Its place; absent when it has none."),
            Must("basis", Words("decisionBasis", "pinned", "held", "kept", "chosen", "unplaced"), "How it came to its place."),
            Must("grounds", Texts, "What people would see in the place."),
            Must(
                "refusals",
                new ListValue(
                    new ObjectValue(
                        Open(
                            "refusal",
                            "Places it does not have, all for one cause.",
                            Must(
                                "cause",
                                Words(
                                    "refusalCause",
                                    "dead",
                                    "reserved",
                                    "excluded",
                                    "taken",
                                    "no-path",
                                    "block-clash",
                                    "stream-limit",
                                    "link-full",
                                    "late",
                                    "spare",
                                    "separation",
                                    "worse",
                                    "equally-good",
                                    "search-ended",
                                    "not-looked-at",
                                    "not-allowed",
                                    "wrong-kind",
                                    "overheard"
                                ),
                                "The cause."
                            ),
                            Must("points", Texts, "The places."),
                            Must("devices", Texts, "Whole devices."),
                            Must("by", Texts, "The demands that stand there."),
                            Must("reasons", Texts, "Reasons given in the document for marks."),
                            Must("links", Links, "Directions of links without room on the way there."),
                            May("difference", new ObjectValue(CreateDifference()), "What would be worse.")
                        )
                    )
                ),
                "The other places."
            ),
            May(
                "runnerUp",
                new ObjectValue(
                    Open(
                        "runnerUp",
                        "The best assignment found without this place.",
                        May("at", Text, "Where the demand would be; absent when nowhere."),
                        Must("objective", Objective, "How good that would be."),
                        Must("proven", new BoolKind(), "True when nothing better exists without the place."),
                        May("difference", new ObjectValue(CreateDifference()), "The first number that differs; absent when it is just as good."),
                        Must("moves", Moves(), "Others that would be elsewhere.")
                    )
                ),
                "The best assignment found without this place."
            ),
            Must("unplaced", new ListValue(new ObjectValue(Unplaced)), "What of it has no place.")
        );

    private static ObjectShape CreateDifference() =>
        Open(
            "difference",
            "The first number of the objective in which two assignments differ.",
            Must("number", new IntKind(1, ObjectiveNumbers), "Which of the 14 numbers, from 1, in the usual order."),
            Must("by", new IntKind(-int.MaxValue, int.MaxValue), "By how much it is worse; negative when better.")
        );

    private static ObjectShape CreateWhatIf() =>
        Open(
            "whatIf",
            "What follows when a demand must have a place, or must not.",
            Must("demand", Text, "The demand."),
            Must("point", Text, "The place."),
            Must("wanted", new BoolKind(), "True when it must have the place."),
            Must("already", new BoolKind(), "True when that is so already."),
            May("at", Text, "Where it would be; absent when nowhere."),
            Must("proven", new BoolKind(), "True when nothing better exists."),
            Must("moves", Moves(), "Others that move."),
            Must("lost", Texts, "Others that would lose their place."),
            Must("contradiction", Texts, "Fixed places that cannot hold together with it, itself included."),
            Must("remarks", Texts, "Remarks for people.")
        );

    private static ListValue Moves() =>
        new(
            new ObjectValue(
                Open(
                    "movedDemand",
                    "A demand that two assignments place differently.",
                    Must("demand", Text, "The demand."),
                    May("from", Text, "Its place now; absent when it has none."),
                    May("to", Text, "Its place then; absent when it has none."),
                    Must("held", new BoolKind(), "True when it is held where it is now.")
                )
            )
        );
}
