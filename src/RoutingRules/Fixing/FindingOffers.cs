using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>The fixes offered for one finding.</summary>
public sealed record FindingOffers
{
    /// <summary>The identity of the finding; see <see cref="Rules.Finding.Fingerprint"/>.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The fixes, the safest first.</summary>
    public required ValueList<OfferedFix> Offers { get; init; }
}
