using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Waivers;

/// <summary>A decision to live with a finding for a time: who took it, why, until when and for which documents.</summary>
/// <remarks>Immutable, with value equality over every member. Exactly one of <see cref="Entities"/> and <see cref="Fingerprint"/> is given.</remarks>
public sealed record Waiver
{
    /// <summary>The rule's id or name, such as <c>RR2009</c> or <c>output-stray</c>. Rules of reading cannot be waived.</summary>
    public required string Rule { get; init; }

    /// <summary>
    /// What the finding is about: a finding is meant when it names all of these and no others in their roles. Empty when <see cref="Fingerprint"/> is given.
    /// </summary>
    public ValueList<Entity> Entities { get; init; }

    /// <summary>The identity of the one finding that is meant, as reports give it; null when <see cref="Entities"/> are given.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>Why this is acceptable, for people.</summary>
    public required string Reason { get; init; }

    /// <summary>Who answers for it.</summary>
    public required string Owner { get; init; }

    /// <summary>The last day on which it counts.</summary>
    public required DateOnly Expires { get; init; }

    /// <summary>
    /// The documents it counts for: path patterns, see <see cref="PathPattern"/>; at least one. Empty for a waiver that stands in a show, which counts there.
    /// </summary>
    public required ValueList<string> Scope { get; init; }
}
