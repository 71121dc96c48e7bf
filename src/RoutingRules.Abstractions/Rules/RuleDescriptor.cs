using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <summary>What a rule is, for people and for tools; the only source of its catalogue entry.</summary>
public sealed record RuleDescriptor
{
    /// <summary>The id, such as <c>RR2003</c>; never reused. Plugins use their own prefix of letters.</summary>
    public required string Id { get; init; }

    /// <summary>A short name in kebab case that states the bad pattern, such as <c>output-orphaned</c>.</summary>
    public required string Name { get; init; }

    /// <summary>A title of a few words for people.</summary>
    public required string Title { get; init; }

    /// <summary>The family.</summary>
    public required RuleFamily Family { get; init; }

    /// <summary>The severity of its findings unless the configuration says otherwise.</summary>
    public required Severity Severity { get; init; }

    /// <summary>
    /// All severities that its findings may have unless the configuration says otherwise, the gravest first; empty where all have the usual one.
    /// </summary>
    public ValueList<Severity> Severities { get; init; }

    /// <summary>What it checks, in a sentence or two.</summary>
    public required string Checks { get; init; }

    /// <summary>Why it matters on a show.</summary>
    public required string Why { get; init; }

    /// <summary>What a technician does about a finding.</summary>
    public required string Remedy { get; init; }

    /// <summary>Standard and clause, or <c>common practice, no source</c>.</summary>
    public required string Source { get; init; }

    /// <summary>Whether the engine can mend it.</summary>
    public Fixability Fixability { get; init; }

    /// <summary>The numbers that a configuration may set, by name.</summary>
    public ValueList<RuleOption> Options { get; init; }
}
