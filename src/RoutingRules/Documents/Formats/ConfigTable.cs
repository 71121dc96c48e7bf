using RoutingRules.Configuration;
using RoutingRules.Documents.Tables;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Formats;

/// <summary>The table of a configuration.</summary>
internal static class ConfigTable
{
    private const int Aims = 8;
    private const long LargestExactInteger = (1L << 53) - 1;

    private static readonly ClosedWordKind<Severity> SeverityWord = new(
        "severity",
        ("note", Severity.Note),
        ("warning", Severity.Warning),
        ("error", Severity.Error)
    );

    private static readonly ObjectTable<RuleSetting> Rule = CreateRule();
    private static readonly ObjectTable<AssignmentFile> Assignment = CreateAssignment();

    public static ObjectTable<ConfigFile> Config { get; } = CreateConfig();

    private static ObjectTable<RuleSetting> CreateRule()
    {
        var table = new TableBuilder<RuleSetting>("ruleSetting", "rule setting", "What a crew says about one rule, or about all rules whose ids begin alike.");
        var rule = table.Required(
            "rule",
            new RuleSelectorKind(),
            static setting => setting.Rule,
            "The rule's id or name, such as RR2003 or output-orphaned, or the beginning of ids with a star, such as RR7* for a whole family."
        );
        var enabled = table.OptionalValue("enabled", Kinds.Bool, static setting => setting.Enabled, "Whether it runs. Absent leaves it as it is.");
        var severity = table.OptionalValue(
            "severity",
            SeverityWord,
            static setting => setting.Severity,
            "The severity of its findings. Absent leaves it as it is."
        );
        var options = table.List("options", CreateOption(), static setting => setting.Options, "Options that are set; those not named keep their values.");
        return table.Build(
            (in Slots read) =>
                new RuleSetting
                {
                    Rule = rule[read],
                    Enabled = enabled[read],
                    Severity = severity[read],
                    Options = options[read],
                }
        );
    }

    private static ObjectTable<RuleOptionValue> CreateOption()
    {
        var table = new TableBuilder<RuleOptionValue>("ruleOption", "rule option", "The value that a crew gives to an option of a rule.");
        var name = table.Required(
            "name",
            new NameKind("an option's name"),
            static option => option.Name,
            "The name of the option, such as maximumMilliseconds."
        );
        var value = table.Required(
            "value",
            new DecimalNumberKind(1_000_000_000, positive: false),
            static option => option.Value,
            "The value, in the unit that the name says."
        );
        return table.Build((in Slots read) => new RuleOptionValue { Name = name[read], Value = value[read] });
    }

    private static ObjectTable<AssignmentFile> CreateAssignment()
    {
        var aim = new ClosedWordKind<AssignmentAim>(
            "assignmentAim",
            ("sets", AssignmentAim.Sets),
            ("groups", AssignmentAim.Groups),
            ("distance", AssignmentAim.Distance),
            ("order", AssignmentAim.Order),
            ("rewritten", AssignmentAim.Rewritten),
            ("transmit-blocks", AssignmentAim.TransmitBlocks),
            ("receive-blocks", AssignmentAim.ReceiveBlocks),
            ("numbers", AssignmentAim.Numbers)
        );
        var table = new TableBuilder<AssignmentFile>("assignmentConfig", "assignment", "What an assignment observes beyond the document.");
        var spares = table.OptionalValue(
            "spares",
            Kinds.Count,
            static config => config.Spares,
            "Usable outputs to leave free in each port group in which something new is placed."
        );
        var headroom = table.OptionalValue("headroom", Kinds.Count, static config => config.Headroom, "Streams to leave free at each device.");
        var latency = table.OptionalValue(
            "latencyMilliseconds",
            new DecimalNumberKind(1000, positive: true),
            static config => config.LatencyMilliseconds,
            "Milliseconds after which a feed or line must not arrive, by the latencies that profiles and networks state; recordings and broadcasts "
                + "may be later. Absent means any."
        );
        var inEarLatency = table.OptionalValue(
            "inEarLatencyMilliseconds",
            new DecimalNumberKind(1000, positive: true),
            static config => config.InEarLatencyMilliseconds,
            "The same for in-ear feeds and whatever else ends in somebody's ears. Absent means as for others."
        );
        var order = table.Default(
            "order",
            new ListKind<AssignmentAim>(aim, Aims, Aims, unique: true),
            default,
            static config => config.Order,
            "The order of the softer aims, each once. Absent means the usual order, which is that of the word list."
        );
        var keepUnlisted = table.OptionalValue(
            "keepUnlisted",
            Kinds.Bool,
            static config => config.KeepUnlisted,
            "Whether outputs may go on carrying what no feed asks for where the document already had it so."
        );
        var strategy = table.Optional(
            "strategy",
            new NameKind("a strategy's name"),
            static config => config.Strategy,
            "The name of the strategy. Absent means the default one, exact."
        );
        var budget = table.OptionalValue(
            "budget",
            new LongKind(1, LargestExactInteger),
            static config => config.Budget,
            "Work units after which the strategy stops with what it has. Absent means the usual bound."
        );
        return table.Build(
            (in Slots read) =>
                new AssignmentFile
                {
                    Spares = spares[read],
                    Headroom = headroom[read],
                    LatencyMilliseconds = latency[read],
                    InEarLatencyMilliseconds = inEarLatency[read],
                    Order = order[read],
                    KeepUnlisted = keepUnlisted[read],
                    Strategy = strategy[read],
                    Budget = budget[read],
                }
        );
    }

    private static ObjectTable<ConfigFile> CreateConfig()
    {
        var table = new TableBuilder<ConfigFile>("engineConfig", "configuration", "How a crew wants the engine to run.");
        var version = table.Required("schemaVersion", new VersionKind(ShowTable.Version), static config => config.SchemaVersion, "The version of this format.");
        var extends = table.List(
            "extends",
            Kinds.FilledText,
            static config => config.Extends,
            "Configurations that this one builds on, as paths relative to this file; later ones win, and this file over all of them."
        );
        var failOn = table.OptionalValue(
            "failOn",
            SeverityWord,
            static config => config.FailOn,
            "The lowest severity that counts as a failed check. Absent means warning."
        );
        var rules = table.List("rules", Rule, static config => config.Rules, "Settings of rules; of several for one rule the last counts.");
        var assignment = table.Optional("assignment", Assignment, static config => config.Assignment, "What an assignment observes.");
        var lists = table.Optional("lists", ListTables.Lists, static config => config.Lists, "How lists of feeds and lines are written.");
        var extensions = table.Extensions(static config => config.Extensions);
        return table.Build(
            (in Slots read) =>
                new ConfigFile
                {
                    SchemaVersion = version[read],
                    Extends = extends[read],
                    FailOn = failOn[read],
                    Rules = rules[read],
                    Assignment = assignment[read],
                    Lists = lists[read],
                    Extensions = extensions[read],
                }
        );
    }
}
