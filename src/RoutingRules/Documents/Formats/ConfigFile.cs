using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Formats;

/// <summary>A configuration as written: what is absent stays absent, so that files can be laid over each other.</summary>
internal sealed record ConfigFile
{
    public int SchemaVersion { get; init; } = 1;

    public ValueList<string> Extends { get; init; }

    public Severity? FailOn { get; init; }

    public ValueList<RuleSetting> Rules { get; init; }

    public AssignmentFile? Assignment { get; init; }

    public ListsConfig? Lists { get; init; }

    public ExtensionData? Extensions { get; init; }

    /// <summary>The file of a configuration; what is as usual is left out.</summary>
    public static ConfigFile Of(EngineConfig config) =>
        new()
        {
            SchemaVersion = config.SchemaVersion,
            Extends = config.Extends,
            FailOn = config.FailOn == Severity.Warning ? null : config.FailOn,
            Rules = config.Rules,
            Assignment = config.Assignment == new AssignmentConfig() ? null : AssignmentFile.Of(config.Assignment),
            Lists = config.Lists == new ListsConfig() ? null : config.Lists,
            Extensions = config.Extensions,
        };

    /// <summary>This file laid over another: what it says wins, its settings of rules come last.</summary>
    public ConfigFile Over(ConfigFile below) =>
        new()
        {
            SchemaVersion = SchemaVersion,
            FailOn = FailOn ?? below.FailOn,
            Rules = [.. below.Rules, .. Rules],
            Assignment =
                below.Assignment is null ? Assignment
                : Assignment is null ? below.Assignment
                : Assignment.Over(below.Assignment),
            Lists =
                below.Lists is null ? Lists
                : Lists is null ? below.Lists
                : Laid(Lists, below.Lists),
            Extensions = Extensions ?? below.Extensions,
        };

    public EngineConfig ToConfig() =>
        new()
        {
            SchemaVersion = SchemaVersion,
            Extends = Extends,
            FailOn = FailOn ?? Severity.Warning,
            Rules = Rules,
            Assignment = Assignment?.ToConfig() ?? new AssignmentConfig(),
            Lists = Lists ?? new ListsConfig(),
            Extensions = Extensions,
        };

    private static ListsConfig Laid(ListsConfig over, ListsConfig below) =>
        new()
        {
            Separator = over.Separator ?? below.Separator,
            Feeds = Laid(over.Feeds, below.Feeds),
            Lines = Laid(over.Lines, below.Lines),
        };

    private static ListConfig Laid(ListConfig over, ListConfig below) =>
        new()
        {
            Columns = [.. below.Columns, .. over.Columns],
            Ignore = [.. below.Ignore, .. over.Ignore],
            Words = [.. below.Words, .. over.Words],
        };
}
