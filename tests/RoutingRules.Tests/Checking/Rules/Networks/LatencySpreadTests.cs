using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class LatencySpreadTests
{
    private static readonly LatencySpread Rule = new();

    /// <summary>Two boxes that receive the same stream, the second later by some milliseconds.</summary>
    private static Show Boxed(double later) =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .WithProfile("a", profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 0.5 }] })
            .WithProfile("b", profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 0.5 + later }] })
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"));

    private static Show Feeds(double later, params Feed[] feeds) => Boxed(later) with { Feeds = feeds.ToValueList() };

    private static readonly Feed Both = Feed("sub", FeedRole.Sub, "desk/aux/1", "a/out/1", "b/out/1");

    private static readonly Feed[] Halves =
    [
        Feed("left", FeedRole.Main, "desk/aux/1", "a/out/1") with
        {
            Set = "main",
            Part = "left",
        },
        Feed("right", FeedRole.Main, "desk/aux/2", "b/out/2") with
        {
            Set = "main",
            Part = "right",
        },
    ];

    [Fact]
    public void A_feed_that_arrives_more_than_a_millisecond_apart_is_told()
    {
        Expect.None(Rule, Feeds(1, Both));
        Expect.One(
            Rule,
            Feeds(1.5, Both),
            Severity.Warning,
            "/feeds/0",
            "Feed 'sub' arrives at b/out/1 1.5 ms later than at a/out/1.",
            "feed=sub",
            "late=b/out/1"
        );
    }

    [Fact]
    public void The_parts_of_a_set_are_compared_too()
    {
        Expect.None(Rule, Feeds(1, Halves));
        Expect.One(
            Rule,
            Feeds(2, Halves),
            Severity.Warning,
            "/feeds/0",
            "The parts of set 'main' arrive at b/out/2 2 ms later than at a/out/1.",
            "set=main",
            "late=b/out/2"
        );
    }

    [Fact]
    public void A_set_whose_feed_was_told_is_not_told_again() =>
        Assert.Equal("feed", Assert.Single(RuleTester.Findings(Rule, Feeds(2, Both with { Set = "low" }, Halves[1] with { Set = "low" }))).Entities[0].Role);

    [Fact]
    public void Delays_recordings_and_broadcasts_do_not_count() =>
        Assert.All([FeedRole.Delay, FeedRole.Record, FeedRole.Broadcast], role => Expect.None(Rule, Feeds(20, Both with { Role = role })));

    [Fact]
    public void An_entry_that_is_not_delivered_does_not_count() => Expect.None(Rule, Feeds(20, Feed("sub", FeedRole.Sub, "desk/aux/1", "a/out/1", "b/out/2")));

    // Box a has an amplifier of 3 ms behind it, box b nothing yet: what will play there adds its own time.
    [Fact]
    public void An_output_with_nothing_on_it_is_not_compared_with_a_loudspeaker()
    {
        var show = Amplified(Feeds(0, Both), "a/out/1");

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(Rule, Amplified(Feeds(2, Both), "a/out/1", "b/out/1")));
    }

    // Box a 0.5 + 3, box b 2.5 + 3 behind it.
    [Fact]
    public void The_place_to_which_time_is_counted_is_named() =>
        Expect.One(
            Rule,
            Amplified(Feeds(2, Both), "a/out/1", "b/out/1"),
            Severity.Warning,
            "/feeds/0",
            "Feed 'sub' arrives at amp/out/2, behind b/out/1, 2 ms later than at amp/out/1, behind a/out/1.",
            "feed=sub",
            "late=b/out/1"
        );

    private static Show Amplified(Show show, params string[] outputs) =>
        (
            show with
            {
                Rig = show.Rig with
                {
                    Profiles = [.. show.Rig.Profiles, SmallProfiles.Amplifier],
                    Devices = [.. show.Rig.Devices, new() { Id = new("amp"), Profile = SmallProfiles.Amplifier.Id }],
                    Cables = outputs.Select((output, i) => Cable(output, $"amp/in/{i + 1}")).ToValueList(),
                },
            }
        ).WithProfile(
            "amp",
            profile =>
                profile with
                {
                    Through = [profile.Through[0] with { LatencyMilliseconds = 3 }],
                    LatencyMilliseconds = [new() { Group = new("in"), Value = 0 }, new() { Group = new("out"), Value = 0 }],
                }
        );

    [Fact]
    public void The_difference_can_be_set()
    {
        Assert.Single(Set(Rule, Feeds(0.3, Both), "maximumMilliseconds", 0.2));
        Assert.Empty(Set(Rule, Feeds(3, Both), "maximumMilliseconds", 4));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
