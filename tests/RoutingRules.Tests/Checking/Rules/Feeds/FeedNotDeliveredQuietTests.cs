using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Feeds.FeedNotDeliveredShows;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

/// <summary>What is left to other rules, and what a clean show gives.</summary>
public sealed class FeedNotDeliveredQuietTests
{
    private static readonly FeedNotDelivered Rule = new();

    [Theory]
    [InlineData("desk/aux/9", "box/out/1")]
    [InlineData("gone/aux/1", "box/out/1")]
    [InlineData("desk/aux/1", "box/out/9")]
    [InlineData("desk/aux/1", "gone/out/1")]
    [InlineData("desk/aux/1-2", "box/out/1")]
    [InlineData("desk/aux/1-3", "box/out/1-3")]
    [InlineData("desk/channel/1", "box/out/1")]
    public void A_feed_that_does_not_resolve_is_left_to_its_own_rule(string source, string at) =>
        Expect.None(Rule, DeskAndBox with { Feeds = [Feed("x", FeedRole.Monitor, source, at)] });

    [Fact]
    public void Unknown_devices_zones_and_profiles_are_left_to_their_own_rule()
    {
        var show = DeskAndBox;
        var zone = new Destination { Zones = [new("stage")] };
        var feed = FeedTo("x", FeedRole.Monitor, "desk/aux/1", "gone");

        Expect.None(Rule, show with { Feeds = [feed] });
        Expect.None(Rule, show with { Feeds = [feed with { To = [zone] }] });
        var withZone = show.Rig with
        {
            Zones = [new() { Id = new("stage") }],
            Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Profile = new("unknown/box"), Zone = new("stage") }],
        };
        Expect.None(Rule, show with { Rig = withZone, Feeds = [feed with { To = [zone] }] });
        Expect.None(Rule, show with { Rig = withZone, Feeds = [FeedTo("x", FeedRole.Monitor, "desk/aux/1", "box")] });
    }

    [Fact]
    public void A_profile_that_is_unsound_is_left_to_its_own_rule()
    {
        var box = SmallProfiles.Box with
        {
            Id = new("test/unsound"),
            Routing = [SmallProfiles.Entry("in", "transmit", RoutingMode.Fixed), SmallProfiles.Entry("receiv", "out", RoutingMode.Fixed)],
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", box)).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

        Expect.None(Rule, show with { Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "box/out/1")] });
    }

    [Fact]
    public void A_stream_that_does_not_resolve_is_left_to_its_own_rule()
    {
        var show = DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-3")) with
        {
            Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "box/out/1"), FeedTo("y", FeedRole.Monitor, "desk/aux/2", "box")],
        };

        Expect.None(Rule, show);
    }

    [Fact]
    public void A_loop_and_a_doubled_sink_are_left_to_their_own_rules()
    {
        var loop = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox));
        loop = loop.With(Route("a/in/1", "a/out/1"), Route("b/in/1", "b/out/1")) with
        {
            Rig = loop.Rig with { Cables = [Cable("a/out/1", "b/in/1"), Cable("b/out/1", "a/in/1")] },
            Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "b/out/1")],
        };
        var doubled = Streamed.With(Route("desk/aux/5", "desk/transmit/1"), Route("desk/aux/6", "desk/transmit/1")) with
        {
            Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/6", "box/out/1")],
        };

        Expect.None(Rule, loop);
        Expect.None(Rule, doubled);
    }

    [Fact]
    public void A_feed_that_arrives_at_one_of_two_places_is_left_to_the_fan_out_rule() =>
        Expect.None(Rule, Streamed with { Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "box/out/1", "box/out/5")] });

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void Order_and_names_do_not_change_the_identity_of_findings(CleanShow clean)
    {
        var broken = clean.Show with { Patch = clean.Show.Patch with { Streams = [] } };
        var changed = broken with
        {
            Title = "Other",
            Feeds = broken.Feeds.Reverse().Select(feed => feed with { Name = $"Mix of {feed.Id}" }).ToValueList(),
            Patch = broken.Patch with { Routes = broken.Patch.Routes.Reverse().ToValueList() },
        };

        Assert.NotEmpty(Expect.Fingerprints(Rule, broken));
        Assert.Equal(Expect.Fingerprints(Rule, broken), Expect.Fingerprints(Rule, changed));
    }
}
