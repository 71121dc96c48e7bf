using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Configuration;

/// <summary>How a crew wants the engine to run: which rules, how strict, what an assignment shall spare.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record EngineConfig
{
    /// <summary>The format version; 1.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>
    /// Configurations that this one builds on, as paths relative to its file. They must be loaded and laid under it before an engine takes it.
    /// </summary>
    public ValueList<string> Extends { get; init; }

    /// <summary>The lowest severity that counts as a failed check.</summary>
    public Severity FailOn { get; init; } = Severity.Warning;

    /// <summary>Settings of rules; of several for one rule the last counts.</summary>
    public ValueList<RuleSetting> Rules { get; init; }

    /// <summary>What an assignment observes.</summary>
    public AssignmentConfig Assignment { get; init; } = new();

    /// <summary>How lists of feeds and lines are written.</summary>
    public ListsConfig Lists { get; init; } = new();

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
