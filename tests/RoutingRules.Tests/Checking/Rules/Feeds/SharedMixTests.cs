using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

/// <summary>Two people on one mix both have it, although one place serves one feed.</summary>
public sealed class SharedMixTests
{
    private static readonly FeedNotDelivered Rule = new();

    private static readonly Show Streamed = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

    private static readonly Feed Ears = Feed("ears", FeedRole.InEar, "desk/aux/1-2", "box/out/1-2") with { Person = "singer" };

    [Fact]
    public void A_place_that_both_name_serves_both() =>
        Expect.None(Rule, Streamed with { Feeds = [Ears, Ears with { Id = new("ears-2"), Person = "guitar" }] });

    [Fact]
    public void In_ears_that_name_a_device_share_what_comes_out_there() =>
        Expect.None(Rule, Streamed with { Feeds = [Ears, FeedTo("ears-2", FeedRole.InEar, "desk/aux/1-2", "box") with { Person = "guitar" }] });

    [Fact]
    public void Loudspeakers_stand_apart() =>
        Assert.Single(
            RuleTester.Findings(
                Rule,
                Streamed with
                {
                    Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1"), FeedTo("b", FeedRole.Monitor, "desk/aux/1", "box")],
                }
            )
        );

    [Fact]
    public void What_arrives_for_nobody_is_still_told() =>
        Assert.Single(RuleTester.Findings(Rule, Streamed with { Patch = new(), Feeds = [Ears, Ears with { Id = new("ears-2") }] }));
}
