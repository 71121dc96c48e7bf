using System.Text.RegularExpressions;
using RoutingRules.Fixing;
using RoutingRules.Fixing.Providers;
using RoutingRules.Rules;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Fixing;

/// <summary>Descriptors and providers say the same about what can be mended.</summary>
public sealed class FixabilityTests
{
    [Fact]
    public void A_rule_has_a_provider_exactly_when_its_descriptor_says_so()
    {
        var promised = Promise.Engine.Rules.Where(rule => rule.Descriptor.Fixability != Fixability.None).Select(rule => rule.Descriptor.Id);
        var provided = BuiltInFixes.All.Select(provider => provider.RuleId).ToList();
        Assert.Equal(promised.Order(StringComparer.Ordinal), provided.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_rule_whose_provider_only_lists_choices_is_manual_and_the_others_are_not()
    {
        var choices = BuiltInFixes.All.Where(provider => provider is StandingChoices or NameGainOwner).Select(provider => provider.RuleId);
        var manual = Promise.Engine.Rules.Where(rule => rule.Descriptor.Fixability == Fixability.Manual).Select(rule => rule.Descriptor.Id);
        Assert.Equal(manual.Order(StringComparer.Ordinal), choices.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_provider_names_a_better_safety_than_its_descriptor()
    {
        var seen = new Dictionary<string, FixSafety>(StringComparer.Ordinal);
        foreach (var show in FixSamples.Shows)
        {
            var resolved = Promise.Resolve(show);
            foreach (var finding in Promise.Engine.Check(resolved).Findings)
            {
                foreach (
                    var fix in BuiltInFixes
                        .All.Where(provider => provider.RuleId == finding.Rule)
                        .SelectMany(provider => provider.Propose(new FixContext(resolved), finding))
                )
                {
                    seen[finding.Rule] = fix.Safety > seen.GetValueOrDefault(finding.Rule) ? fix.Safety : seen.GetValueOrDefault(finding.Rule);
                }
            }
        }

        Assert.True(seen.Count > 10, "the samples make too few rules speak");
        foreach (var (rule, best) in seen)
        {
            var promised = Promise.Engine.Rules.Single(known => known.Descriptor.Id == rule).Descriptor.Fixability;
            Assert.True((int)best <= (int)promised - 1, $"{rule}: {best} offered, {promised} promised");
        }
    }

    [Fact]
    public void Manual_fixes_have_two_choices_or_more_in_words()
    {
        foreach (var fix in StandingChoices.All.SelectMany(provider => provider.Propose(null!, null!)))
        {
            Assert.True(fix.Choices.Count > 1, fix.Title);
            Assert.All(fix.Choices, choice => Assert.Matches(new Regex("^[A-Z][^.]+$"), choice));
        }
    }
}
