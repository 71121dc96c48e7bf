using RoutingRules.Documents.Tables;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Catalogue;

/// <summary>Rules that no configuration sets: those of the readers, those about waivers, and those that only comparisons and running orders report.</summary>
internal static class StandingRules
{
    public static IReadOnlyList<RuleDescriptor> All { get; } = [.. ReadingRules.All, .. WaiverRules.All, .. ChangeRules.All, .. RunningOrderRules.All];
}
