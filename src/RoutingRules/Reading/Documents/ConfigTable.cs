using RoutingRules.Configuration;
using RoutingRules.Reading.Tables;
using RoutingRules.Rules;

namespace RoutingRules.Reading.Documents;

/// <summary>The table of a configuration.</summary>
internal static class ConfigTable
{
    private const int Aims = 8;
    private const long LargestExactInteger = (1L << 53) - 1;

    private static readonly ClosedWordKind<Severity> SeverityWord = new(
        "severity", ("note", Severity.Note), ("warning", Severity.Warning), ("error", Severity.Error));

    private static readonly ObjectTable<RuleSetting> Rule = CreateRule();
    private static readonly ObjectTable<AssignmentConfig> Assignment = CreateAssignment();

    public static ObjectTable<EngineConfig> Config { get; } = CreateConfig();

    private static ObjectTable<RuleSetting> CreateRule()
    {
        var table = new TableBuilder<RuleSetting>("ruleSetting", "rule setting", "What a crew says about one rule.");
        var rule = table.Required("rule", new NameKind("a rule's id or name"), static setting => setting.Rule, "The rule's id or name, such as RR2003 or output-orphaned.");
        var enabled = table.OptionalValue("enabled", Kinds.Bool, static setting => setting.Enabled, "Whether it runs. Absent leaves it as it is.");
        var severity = table.OptionalValue("severity", SeverityWord, static setting => setting.Severity, "The severity of its findings. Absent leaves it as it is.");
        var options = table.List("options", CreateOption(), static setting => setting.Options, "Options that are set; those not named keep their values.");
        return table.Build((in Slots read) => new RuleSetting { Rule = rule[read], Enabled = enabled[read], Severity = severity[read], Options = options[read] });
    }

    private static ObjectTable<RuleOptionValue> CreateOption()
    {
        var table = new TableBuilder<RuleOptionValue>("ruleOption", "rule option", "The value that a crew gives to an option of a rule.");
        var name = table.Required("name", new NameKind("an option's name"), static option => option.Name, "The name of the option, such as maximumMilliseconds.");
        var value = table.Required("value", new DecimalNumberKind(1_000_000_000, positive: false), static option => option.Value, "The value, in the unit that the name says.");
        return table.Build((in Slots read) => new RuleOptionValue { Name = name[read], Value = value[read] });
    }

    private static ObjectTable<AssignmentConfig> CreateAssignment()
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
            ("numbers", AssignmentAim.Numbers));
        var table = new TableBuilder<AssignmentConfig>("assignmentConfig", "assignment", "What an assignment observes beyond the document.");
        var spares = table.Default("spares", Kinds.Count, 0, static config => config.Spares, "Usable outputs to leave free in each port group in which something new is placed.");
        var headroom = table.Default("headroom", Kinds.Count, 0, static config => config.Headroom, "Streams to leave free at each device.");
        var order = table.Default(
            "order",
            new ListKind<AssignmentAim>(aim, Aims, Aims, unique: true),
            default,
            static config => config.Order,
            "The order of the softer aims, each once. Absent means the usual order, which is that of the word list.");
        var keepUnlisted = table.Default(
            "keepUnlisted", Kinds.Bool, false, static config => config.KeepUnlisted, "Whether outputs may go on carrying what no feed asks for where the document already had it so.");
        var strategy = table.Optional("strategy", new NameKind("a strategy's id"), static config => config.Strategy, "The id of the strategy. Absent means the built-in one.");
        var budget = table.OptionalValue(
            "budget", new LongKind(1, LargestExactInteger), static config => config.Budget, "Work units after which the strategy stops with what it has. Absent means the usual bound.");
        return table.Build((in Slots read) => new AssignmentConfig
        {
            Spares = spares[read],
            Headroom = headroom[read],
            Order = order[read],
            KeepUnlisted = keepUnlisted[read],
            Strategy = strategy[read],
            Budget = budget[read],
        });
    }

    private static ObjectTable<EngineConfig> CreateConfig()
    {
        var table = new TableBuilder<EngineConfig>("engineConfig", "configuration", "How a crew wants the engine to run.");
        var version = table.Required("schemaVersion", new VersionKind(ShowTable.Version), static config => config.SchemaVersion, "The version of this format.");
        var failOn = table.Default(
            "failOn", SeverityWord, Severity.Warning, static config => config.FailOn, "The lowest severity that counts as a failed check. Absent means warning.");
        var rules = table.List("rules", Rule, static config => config.Rules, "Settings of single rules; of several for one rule the last counts.");
        var assignment = table.Default("assignment", Assignment, new AssignmentConfig(), static config => config.Assignment, "What an assignment observes.");
        var extensions = table.Extensions(static config => config.Extensions);
        return table.Build((in Slots read) => new EngineConfig
        {
            SchemaVersion = version[read],
            FailOn = failOn[read],
            Rules = rules[read],
            Assignment = assignment[read],
            Extensions = extensions[read],
        });
    }
}
