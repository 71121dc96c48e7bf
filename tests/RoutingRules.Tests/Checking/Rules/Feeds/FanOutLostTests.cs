using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class FanOutLostTests
{
    private static readonly FanOutLost Rule = new();

    private static Show TwoBoxes => Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box));

    [Fact]
    public void A_feed_that_reaches_one_of_two_boxes_gives_one_finding()
    {
        var show = TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4")) with
        {
            Feeds = [Feed("subs", FeedRole.Sub, "desk/aux/2", "a/out/2", "b/out/2") with { Name = "Subs" }],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/1",
            "Feed 'Subs' arrives at a/out/2, but not at b/out/2: no stream reaches b/receive/2.",
            "feed=subs",
            "to=b/out/2"
        );
    }

    [Fact]
    public void A_feed_that_reaches_both_boxes_gives_none() =>
        Expect.None(
            Rule,
            TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4")) with
            {
                Feeds = [Feed("subs", FeedRole.Sub, "desk/aux/2", "a/out/2", "b/out/2")],
            }
        );

    [Fact]
    public void Destinations_left_to_devices_name_the_outputs_that_are_served()
    {
        var show = TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/5-8")) with { Feeds = [FeedTo("subs", FeedRole.Sub, "desk/aux/2", "b", "a")] };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'subs' arrives at a/out/6, but not at b: the signal goes nowhere else.",
            "feed=subs",
            "to=b"
        );
    }

    [Fact]
    public void Two_entries_for_one_box_need_two_outputs()
    {
        var show = TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4")) with { Feeds = [FeedTo("subs", FeedRole.Sub, "desk/aux/2", "a", "a")] };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/1",
            "Feed 'subs' arrives at a/out/2, but not at a: a/out/2 carries it, but counts for 'subs (1 of 2)' already.",
            "feed=subs",
            "to=a"
        );
    }

    [Fact]
    public void A_feed_that_arrives_nowhere_is_left_to_its_own_rule() =>
        Expect.None(Rule, TwoBoxes with { Feeds = [Feed("subs", FeedRole.Sub, "desk/aux/2", "a/out/2", "b/out/2")] });

    [Fact]
    public void A_destination_that_does_not_resolve_is_left_to_its_own_rule() =>
        Expect.None(
            Rule,
            TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4")) with
            {
                Feeds = [Feed("subs", FeedRole.Sub, "desk/aux/2", "a/out/2", "c/out/2", "b/out/99")],
            }
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void Dropping_one_receiver_loses_its_feeds_in_one_finding_when_others_still_receive(CleanShow clean)
    {
        var stream = clean.Show.Patch.Streams[0];
        var isFirst = stream.From.First == 1;
        var aux = isFirst ? clean.AuxInSlot[..4] : clean.AuxInSlot[4..];
        var streams = clean.Show.Patch.Streams.ToArray();
        streams[0] = stream with { To = stream.To.Take(stream.To.Count - 1).ToValueList() };
        var show = clean.Show with { Patch = clean.Show.Patch with { Streams = streams.ToValueList() } };

        var findings = RuleTester.Findings(Rule, show);

        // Pinned destinations are lost at neighbouring slots; those left to devices each keep other ends of their own.
        Assert.Equal(
            stream.To.Count == 1 ? [] : aux.Select(number => $"mix-{number}").Order(StringComparer.Ordinal),
            findings.SelectMany(finding => finding.Entities).Where(entity => entity.Role == "feed").Select(entity => entity.Id).Order(StringComparer.Ordinal)
        );
        if (stream.To.Count > 1 && clean.Show.Feeds[0].To[0].At is not null)
        {
            Assert.Single(findings);
        }
    }
}
