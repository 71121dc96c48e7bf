using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class InEarLimiterMissingTests
{
    private static readonly InEarLimiterMissing Rule = new();

    private static Show Ears(bool? limiter, string? person = null, FeedRole? role = null) =>
        Of(("desk", SmallProfiles.Console)) with
        {
            Feeds = [Feed("ears", role ?? FeedRole.InEar, "desk/aux/1-2", "desk/out/1-2") with { Limiter = limiter, Person = person }],
        };

    [Fact]
    public void A_feed_that_says_there_is_none_is_an_error() =>
        Expect.One(Rule, Ears(false, "fiddle"), Severity.Error, "/feeds/0/limiter", "In-ear feed 'ears' of fiddle has no limiter.", "feed=ears");

    [Fact]
    public void A_name_that_says_whose_ears_they_are_is_enough() =>
        Expect.One(Rule, Ears(false, "Ears"), Severity.Error, "/feeds/0/limiter", "In-ear feed 'ears' has no limiter.", "feed=ears");

    [Fact]
    public void A_feed_that_says_nothing_is_a_warning() =>
        Expect.One(Rule, Ears(null), Severity.Warning, "/feeds/0", "Nothing is said about a limiter in in-ear feed 'ears'.", "feed=ears");

    [Fact]
    public void A_declared_limiter_and_other_roles_are_fine()
    {
        Expect.None(Rule, Ears(true));
        Expect.None(Rule, Ears(null, null, FeedRole.Monitor));
        Expect.None(Rule, Ears(false, null, FeedRole.Main));
    }

    [Theory]
    [InlineData("iem", false)]
    [InlineData("iem", null)]
    [InlineData("monitor", false)]
    [InlineData("monitor", null)]
    [InlineData("utility", false)]
    [InlineData("utility", null)]
    public void Whatever_ends_at_a_rack_needs_a_limiter_whatever_it_is_called(string role, bool? limiter)
    {
        var feed = Feed("mix", new FeedRole(role), "desk/aux/1", "box/out/1") with { Limiter = limiter };
        Expect.One(
            Rule,
            EarRig.Show(feed),
            Severity.Error,
            limiter is null ? "/feeds/0" : "/feeds/0/limiter",
            limiter is null
                ? $"Nothing is said about a limiter in feed 'mix' ({role}), which goes into somebody's ears at rack/in/1."
                : $"Feed 'mix' ({role}), which goes into somebody's ears at rack/in/1, has no limiter.",
            "feed=mix"
        );
        Expect.None(Rule, EarRig.Show(feed with { Limiter = true }));
    }

    [Fact]
    public void A_mix_for_a_wedge_needs_no_limiter()
    {
        Expect.None(Rule, EarRig.Show(Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/8") with { Limiter = false }));
        Expect.None(Rule, EarRig.Show(Feed("mix", FeedRole.Utility, "desk/aux/1", "box/out/8")));
    }

    [Fact]
    public void An_in_ear_feed_that_says_nothing_is_an_error_at_a_rack() =>
        Expect.One(
            Rule,
            EarRig.Show(FeedTo("ears", FeedRole.InEar, "desk/aux/1", "rack") with { Person = "singer" }),
            Severity.Error,
            "/feeds/0",
            "Nothing is said about a limiter in in-ear feed 'ears' of singer, which goes into somebody's ears at rack/in/1.",
            "feed=ears"
        );

    [Fact]
    public void A_wedge_that_shares_the_output_of_an_in_ear_feed_is_told_as_that() =>
        Expect.None(Rule, EarRig.Show(EarRig.Ears("ears", "desk/aux/1", "box/out/1"), Feed("wedge", FeedRole.Monitor, "desk/aux/1", "rack/in/1")));

    // NIOSH allows 480 / 2^((110 - 85) / 3) minutes at 110 dBA: 1.49 minutes (public copy of the NIOSH page).
    [Fact]
    public void The_time_named_in_the_reason_is_that_of_the_published_formula()
    {
        Assert.Equal(1.5, 480 / Math.Pow(2, (110 - 85) / 3.0), 0.05);
        Assert.Contains("about a minute and a half a day at 110 dBA", Rule.Descriptor.Why, StringComparison.Ordinal);
    }
}
