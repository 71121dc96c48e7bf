using RoutingRules.Fixing;
using RoutingRules.Fixing.Providers;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Fixing;

/// <summary>The small shows fixes are tried on, and what is expected of them.</summary>
internal static class FixExpectations
{
    public static ValueList<Fix> Expect(Rule rule, Show show, FixSafety safety, string title, params string[] edits)
    {
        var finding = Assert.Single(RuleTester.Findings(rule, show));
        var offers = Offers(rule, show);
        Assert.Equal(title, offers[0].Title);
        Assert.Equal(safety, offers[0].Safety);
        Assert.Equal(edits, offers[0].Edits.Select(ShowText.Describe));

        var mended = show;
        foreach (var edit in offers[0].Edits)
        {
            mended = edit.Apply(mended);
            Assert.NotNull(mended);
        }

        Assert.DoesNotContain(RuleTester.Findings(rule, mended), left => left.Fingerprint() == finding.Fingerprint());
        return offers;
    }

    public static ValueList<Fix> Offers(Rule rule, Show show)
    {
        var context = new FixContext(ShowResolver.Resolve(show, new ProfileLibrary([])));
        var provider = Assert.Single(BuiltInFixes.All, provider => provider.RuleId == rule.Descriptor.Id);
        return provider.Propose(context, RuleTester.Findings(rule, show)[0]);
    }
}
