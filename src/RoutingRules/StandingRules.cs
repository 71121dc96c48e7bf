using RoutingRules.Answers.Comparing;
using RoutingRules.Answers.Running;
using RoutingRules.Reading;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules;

/// <summary>Rules that no configuration sets: those of the readers, those about waivers, and those that only comparisons and running orders report.</summary>
internal static class StandingRules
{
    public static IReadOnlyList<RuleDescriptor> All { get; } = [.. ReadingRules.All, .. WaiverRules.All, .. ChangeRules.All, .. RunRules.All];
}
