using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Waivers;

/// <summary>The identity of a known finding.</summary>
public sealed record BaselineFinding
{
    /// <summary>The rule's id.</summary>
    public required string Rule { get; init; }

    /// <summary>The identity: 16 hexadecimal digits, see <see cref="Finding.Fingerprint"/>.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>What the finding was about, for people; the fingerprint is what counts.</summary>
    public ValueList<Entity> Entities { get; init; }
}
