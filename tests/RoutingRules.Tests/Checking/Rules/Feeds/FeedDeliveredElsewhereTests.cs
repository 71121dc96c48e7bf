using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class FeedDeliveredElsewhereTests
{
    private static readonly FeedDeliveredElsewhere Rule = new();

    private static Show TwoBoxes => Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box));

    private static Show SentToB => TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "b/receive/1-4"));

    [Fact]
    public void A_feed_at_the_wrong_box_gives_one_finding_with_both_places()
    {
        var show = SentToB with { Feeds = [FeedTo("vox", FeedRole.InEar, "desk/aux/2", "a") with { Name = "Vox" }] };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/feeds/0/to/0",
            "Feed 'Vox' is missing at a and sounds at b/out/2, where no feed wants it.",
            "feed=vox",
            "output=b/out/2"
        );
    }

    [Fact]
    public void A_run_of_feeds_at_the_wrong_box_gives_one_finding()
    {
        var show = SentToB with { Feeds = [FeedTo("y", FeedRole.Monitor, "desk/aux/2", "a"), FeedTo("x", FeedRole.Monitor, "desk/aux/1", "a")] };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/feeds/1/to/0",
            "2 feeds sound at b/out/1-2, where no feed wants them. Missing: 'x' at a and 'y' at a.",
            "feed=x",
            "feed=y",
            "output=b/out/1-2"
        );
    }

    [Fact]
    public void A_feed_at_its_own_box_gives_none() => Expect.None(Rule, SentToB with { Feeds = [FeedTo("vox", FeedRole.InEar, "desk/aux/2", "b")] });

    [Fact]
    public void A_feed_that_arrives_everywhere_may_sound_elsewhere_too() =>
        Expect.None(
            Rule,
            TwoBoxes.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4")) with
            {
                Feeds = [FeedTo("vox", FeedRole.InEar, "desk/aux/2", "a")],
            }
        );

    [Fact]
    public void An_output_that_another_feed_of_the_bus_may_use_is_no_wrong_place() =>
        Expect.None(
            Rule,
            SentToB with
            {
                Feeds = [FeedTo("vox", FeedRole.Monitor, "desk/aux/2", "a"), Feed("spare", FeedRole.Record, "desk/aux/2", "b/out/2")],
            }
        );

    [Fact]
    public void A_wrong_number_on_the_right_box_is_a_wrong_place_for_a_pinned_feed()
    {
        var show = SentToB.With(Route("desk/aux/5", "desk/transmit/3")) with { Feeds = [Feed("vox", FeedRole.Monitor, "desk/aux/5", "b/out/4")] };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/feeds/0/to/0",
            "Feed 'vox' is missing at b/out/4 and sounds at b/out/3, where no feed wants it.",
            "feed=vox",
            "output=b/out/3"
        );
    }

    [Fact]
    public void A_factory_leftover_on_the_desk_is_quiet() => Expect.None(Rule, TwoBoxes with { Feeds = [FeedTo("pa", FeedRole.Main, "desk/main/1", "a")] });

    [Fact]
    public void What_an_amplifier_makes_of_a_wrong_output_is_not_told_twice()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        show = show.With(Stream("s1", "desk/transmit/1-4", "b/receive/1-4")) with
        {
            Rig = show.Rig with { Cables = [Cable("b/out/2", "amp/in/1")] },
            Feeds = [FeedTo("vox", FeedRole.Monitor, "desk/aux/2", "a")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/feeds/0/to/0",
            "Feed 'vox' is missing at a and sounds at b/out/2, where no feed wants it.",
            "feed=vox",
            "output=b/out/2"
        );
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
